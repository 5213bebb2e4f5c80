import { inEach } from '#words/in-each.ts';

/** What everybody in a crew is shown of it; what changes are told as stands in crew-changes.ts. */
export const crewWords = inEach(
  {
    headline: (members: number, leads: number) =>
      `${members} ${members === 1 ? 'member' : 'members'}, ${leads} ${leads === 1 ? 'lead' : 'leads'}.`,
    nameLead: 'Name a lead with /crew add: only a lead signs hold points.',
    title: 'The crew',
    columns: ['what', 'is', 'by'],
    notSet: (unset: string) => `not set. ${unset}`,
    notUnderstood: (kept: string) => `${kept} (no longer understood)`,
    /** While nobody has set it, by the name of the setting. */
    unset: {
      units: 'Taken as inch-pound.',
      'time-zone': 'Dates are those of UTC, and a license rather ends a day early.',
      language: 'Taken as English. In Discord each person’s own language comes first.',
      'crew-name': 'The occupant’s page has a line to write it on.',
      'crew-phone': 'The occupant’s page has a line to write it on.',
    } as Readonly<Record<string, string>>,
    unitNames: {
      'inch-pound': 'inch-pound',
      metric: 'metric',
      both: 'both: inch-pound first, metric in brackets',
    } as Readonly<Record<string, string>>,
    kept: 'closed jobs are kept',
    forGood: 'for good',
    afterYears: (count: number) => `${count} ${count === 1 ? 'year' : 'years'} after closing`,
    afterMonths: (count: number) => `${count} ${count === 1 ? 'month' : 'months'} after closing`,
    member: 'member',
    kinds: { lead: 'lead', apprentice: 'apprentice', office: 'office' },
    qualifications: {
      'electrically-qualified': 'electrically qualified',
      'licensed-electrician': 'licensed electrician',
      'certified-renovator': 'certified renovator (lead paint)',
      'combustion-tester': 'combustion tester',
    },
    qualification: (what: string, number: string, until: string) => `${what} ${number}, to ${until}`,
    lapsed: (what: string) => `LAPSED: ${what}`,
    sameName: 'More than one member goes by that name. Name the person with @, or as /crew show does.',
    nobodyNamed: 'Nobody of that name is in the crew. /crew show lists who is; /crew add takes somebody in.',
    mayNotSign: (name: string, what: string) => `${name} may not sign on this any more: ${what}.`,
  },
  {
    headline: (members, leads) =>
      `${members} ${members === 1 ? 'integrante' : 'integrantes'}, ${leads} ${leads === 1 ? 'jefe' : 'jefes'} de cuadrilla.`,
    nameLead: 'Nombre un jefe de cuadrilla con /crew add: solo un jefe firma los altos.',
    title: 'La cuadrilla',
    columns: ['qué', 'es', 'por'],
    notSet: (unset) => `sin poner. ${unset}`,
    notUnderstood: (kept) => `${kept} (ya no se entiende)`,
    unset: {
      units: 'Se toman pulgadas, pies y cfm.',
      'time-zone': 'Las fechas son las de UTC, y una licencia vence más bien un día antes.',
      language: 'Se toma como inglés. En Discord va primero el idioma de cada persona.',
      'crew-name': 'La hoja para quien vive ahí tiene una línea para escribirlo.',
      'crew-phone': 'La hoja para quien vive ahí tiene una línea para escribirlo.',
    },
    unitNames: {
      'inch-pound': 'pulgadas, pies y cfm',
      metric: 'métricas',
      both: 'las dos: primero pulgadas, pies y cfm, métricas entre paréntesis',
    },
    kept: 'los trabajos cerrados se guardan',
    forGood: 'para siempre',
    afterYears: (count) => `${count} ${count === 1 ? 'año' : 'años'} después de cerrarse`,
    afterMonths: (count) => `${count} ${count === 1 ? 'mes' : 'meses'} después de cerrarse`,
    member: 'integrante',
    kinds: { lead: 'jefe de cuadrilla', apprentice: 'aprendiz', office: 'oficina' },
    qualifications: {
      'electrically-qualified': 'calificado en electricidad',
      'licensed-electrician': 'electricista con licencia',
      'certified-renovator': 'renovador certificado (pintura con plomo)',
      'combustion-tester': 'probador de combustión',
    },
    qualification: (what, number, until) => `${what} ${number}, hasta ${until}`,
    lapsed: (what) => `VENCIDA: ${what}`,
    sameName: 'Más de un integrante se llama así. Nombre a la persona con @, o como lo hace /crew show.',
    nobodyNamed: 'Nadie con ese nombre está en la cuadrilla. /crew show dice quién está; /crew add mete a alguien.',
    mayNotSign: (name, what) => `${name} ya no puede firmar con esto: ${what}.`,
  },
);
