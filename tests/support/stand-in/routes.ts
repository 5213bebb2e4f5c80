import { applicationRoutes } from './application-routes.ts';
import { channelRoutes } from './channel-routes.ts';
import { interactionRoutes } from './interaction-routes.ts';
import type { Route } from './route.ts';

export const routes: readonly Route[] = [...interactionRoutes, ...channelRoutes, ...applicationRoutes];
