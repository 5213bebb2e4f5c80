import { inEach } from './in-each.ts';

/** Why a photo or a file somebody sent is not taken. */
export const fileWords = inEach(
  {
    wordsAreNoPhoto: 'Words are no photo. Send the photo itself: press the button of the step, or use /swap photo.',
    tooLargePhoto: 'That photo is larger than 10 MB. Send it smaller: a screenshot of it will do.',
    notAPhoto: 'That file is not a photo, whatever its name says. Send a JPEG, PNG, WebP or HEIC picture.',
    saysWhere:
      'That HEIC photo says where it was taken, and that cannot be taken out of a HEIC file here. Send it as a JPEG, or send a screenshot of it.',
    unusual:
      'That photo is damaged or built in an unusual way, so what its file says beside the picture, such as where it was taken, cannot be taken out. Send a screenshot of it.',
    tooLargeText: 'That file is larger than 1 MB. Send a smaller one.',
    notText: 'That file is not text in UTF-8. Save it as text or CSV UTF-8, and send it again.',
    noSuchPhoto: (name: string) => `There is no file ${name}. Give the path of the photo.`,
    notAFile: (name: string) => `${name} is not a file. Give the path of the photo.`,
    unreadable: (name: string) => `The file ${name} cannot be read.`,
    gone: 'The platform no longer has that file. Send it again.',
    elsewhere: 'That file does not lie with the platform, so it was not fetched. Send the file itself.',
    unreachable: 'The file could not be fetched from the platform. Send it again in a minute.',
    busy: 'Too many files are being fetched just now. Send it again in a minute.',
    nothingRecorded: (says: string) => `${says} Nothing was recorded, and the step stays as it was.`,
    mayNotAttach:
      'This bot may not attach files in this channel, so the photo has no place to stay. Allow it, then send the photo again.',
    photoFrom: (who: string) => `Photo from ${who}`,
    photoForStep: 'A photo somebody of the crew sent for a step',
    notTakenIn: 'The platform did not take the photo into this channel. Nothing was recorded. Send it again.',
    notRecorded: 'This photo was not recorded.',
  },
  {
    wordsAreNoPhoto: 'Las palabras no son foto. Mande la foto misma: oprima el botón del paso, o use /swap photo.',
    tooLargePhoto: 'Esa foto pasa de 10 MB. Mándela más chica: una captura de pantalla sirve.',
    notAPhoto: 'Ese archivo no es una foto, diga lo que diga su nombre. Mande una imagen JPEG, PNG, WebP o HEIC.',
    saysWhere:
      'Esa foto HEIC dice dónde se tomó, y eso aquí no se puede quitar de un archivo HEIC. Mándela como JPEG, o mande una captura de pantalla.',
    unusual:
      'Esa foto está dañada o hecha de una manera rara, así que no se puede quitar lo que su archivo dice además de la imagen, como dónde se tomó. Mande una captura de pantalla.',
    tooLargeText: 'Ese archivo pasa de 1 MB. Mande uno más chico.',
    notText: 'Ese archivo no es texto en UTF-8. Guárdelo como texto o CSV UTF-8, y mándelo otra vez.',
    noSuchPhoto: (name) => `No hay un archivo ${name}. Dé la ruta de la foto.`,
    notAFile: (name) => `${name} no es un archivo. Dé la ruta de la foto.`,
    unreadable: (name) => `No se puede leer el archivo ${name}.`,
    gone: 'La plataforma ya no tiene ese archivo. Mándelo otra vez.',
    elsewhere: 'Ese archivo no está en la plataforma, así que no se trajo. Mande el archivo mismo.',
    unreachable: 'No se pudo traer el archivo de la plataforma. Mándelo otra vez en un minuto.',
    busy: 'Ahora se traen demasiados archivos. Mándelo otra vez en un minuto.',
    nothingRecorded: (says) => `${says} No se anotó nada, y el paso queda como estaba.`,
    mayNotAttach:
      'Este bot no puede adjuntar archivos en este canal, así que la foto no tiene dónde quedar. Permítalo, y mande la foto otra vez.',
    photoFrom: (who) => `Foto de ${who}`,
    photoForStep: 'Una foto que alguien de la cuadrilla mandó para un paso',
    notTakenIn: 'La plataforma no aceptó la foto en este canal. No se anotó nada. Mándela otra vez.',
    notRecorded: 'Esta foto no se anotó.',
  },
);
