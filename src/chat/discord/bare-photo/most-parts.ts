/** More parts than a program that writes pictures makes of 10 MB: few enough that taking them apart is done in no time. */
export const mostParts = 50_000;
