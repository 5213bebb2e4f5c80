import { inEach } from '#words/in-each.ts';

/** How a callback asks for its checks and reads back what it understood of a complaint. */
export const callbackAsking = inEach(
  {
    prompt: (question: string, place: string) => `${question} (${place})`,
    enough: 'Stop asking, show causes',
    notAskedAgain: 'It is not asked again.',
    countsAsThere: 'Nobody can say, so it counts as there.',
    toldBefore: (day: string, who: string, said: string) =>
      `On ${day} ${who} told of a danger: “${said}”. Is it still so?`,
    toldThen: (day: string, who: string, said: string) =>
      `Told on ${day} by ${who}: “${said}”. It counts until somebody says that it is no longer so.`,
    stillBrief: (day: string) => `Danger told on ${day}, still so`,
    couldNot: 'could not be checked',
    oneOf: (labels: string) => `one of: ${labels}`,
    understood: (signs: string) => `I understood: ${signs}.`,
    noSign: 'I understood no sign that is there.',
    notThere: (signs: string) => `Not there: ${signs}.`,
    theJob: (contexts: string) => `The job: ${contexts}.`,
    lost: (said: string) => ` Not understood: ${said}.`,
    isThatRight: (understood: string) => `${understood} Is that right?`,
    heardWhy: 'A word taken wrongly would lead to the wrong cause. Pick what is wrong and it is left out.',
    heardBrief: 'What was understood',
    right: 'That is right',
    maybeThere: (sign: string) => `There may be: ${sign}`,
    notSo: (sign: string) => `Not: ${sign}`,
    asUnderstood: 'Taken as understood.',
  },
  {
    prompt: (question, place) => `${question} (${place})`,
    enough: 'No preguntar más, ver causas',
    notAskedAgain: 'No se pregunta otra vez.',
    countsAsThere: 'Nadie puede decirlo, así que cuenta como que sí.',
    toldBefore: (day, who, said) => `El ${day} ${who} avisó de un peligro: “${said}”. ¿Sigue igual?`,
    toldThen: (day, who, said) =>
      `Lo dijo ${who} el ${day}: “${said}”. Cuenta hasta que alguien diga que ya no es así.`,
    stillBrief: (day) => `Peligro avisado el ${day}, sigue igual`,
    couldNot: 'no se pudo revisar',
    oneOf: (labels) => `uno de estos: ${labels}`,
    understood: (signs) => `Entendí: ${signs}.`,
    noSign: 'No entendí ninguna señal que haya.',
    notThere: (signs) => `No hay: ${signs}.`,
    theJob: (contexts) => `El trabajo: ${contexts}.`,
    lost: (said) => ` No entendí: ${said}.`,
    isThatRight: (understood) => `${understood} ¿Es correcto?`,
    heardWhy: 'Una palabra mal entendida llevaría a la causa equivocada. Elija lo que esté mal y se quita.',
    heardBrief: 'Lo que se entendió',
    right: 'Es correcto',
    maybeThere: (sign) => `Puede haber: ${sign}`,
    notSo: (sign) => `No: ${sign}`,
    asUnderstood: 'Se toma como se entendió.',
  },
);
