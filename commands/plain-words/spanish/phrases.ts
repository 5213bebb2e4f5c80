import { asking } from './asking.ts';
import { complaining } from './complaining.ts';

/**
 * The trade's words in Spanish, each with the words the English reader knows. No accents; the longest
 * phrase that fits is taken. Nothing behind it means that the word says nothing of its own.
 */
const said = `
prueba de bolsa | bag test
prueba de la bolsa | bag test
prueba con bolsa | bag test
bolsa | bag
campana de flujo | flow hood
campana de medir | flow hood
con campana | with flow hood
con la campana de flujo | with flow hood
con campana de flujo | with flow hood
con la campana | with flow hood
la campana marca | flow hood reads
campana marca | flow hood reads
caja de flujo | flow box
caja de caudal | flow box
anemometro | anemometer
midio | measured
medi | measured
mide | reads
medimos | measured
medido | measured
marco | reads
lectura | reading
lecturas | readings
en la rejilla | at the grille
rejilla | grille
aire de reposicion | make-up air
por donde entra el aire | make-up air
entra suficiente aire | enough make-up air
le falta aire | starved for make-up air
entra aire | make-up air
puerta sopladora | blower door
calentador de gas | gas water heater
calentador de agua de gas | gas water heater
boiler de gas | gas water heater
boiler | water heater
calentador de agua | water heater
tiro natural | natural draft
chimenea | fireplace
secadora | dryer
campana de cocina | range hood
campana de estufa | range hood
rejilla de paso | transfer grille
luz de la puerta | door gap
luz bajo la puerta | door gap
debajo de la puerta | door gap
bajo la puerta | door gap
puerta | door
corte | undercut
bano | bath
banos | bath
medio bano | half bath
bano completo | full bath with tub and toilet
cuarto | room
cuarto de bano | bathroom
regadera | shower
ducha | shower
duchas | shower
regaderazo | shower
excusado | toilet
escusado | toilet
inodoro | toilet
taza | toilet
wc | toilet
sanitario | toilet
retrete | toilet
poceta | toilet
tina | tub
banera | tub
banadera | tub
tina con regadera | tub shower combo
tina con ducha | tub shower combo
jacuzzi | jacuzzi tub
hidromasaje | jetted tub
inodoro aparte | separate toilet
excusado aparte | separate toilet
regaderas | shower
tinas | tub
excusados | toilet
inodoros | toilet
lavabo |
lavamanos |
techo | ceiling
cielo raso | ceiling
cielo | ceiling
plafon | ceiling
altura | height
siempre prendido | always on
siempre encendido | always on
todo el dia | all the time
las 24 horas | 24/7
extractor | fan
extractores | fans
ventilador | fan
ventiladores | fans
abanico | fan
ducto | duct
ductos | duct
conducto | duct
tubo | pipe
tuberia | pipe
flex | flex
flexible | flex
ducto flexible | flex
tubo flexible | flex
manguera | flex
manguera flexible | flex
acordeon | flex
foil | foil flex
flex de aluminio | foil flex
rigido | rigid
ducto rigido | rigid duct
tubo rigido | rigid duct
liso | smooth
ducto liso | smooth duct
tubo liso | smooth duct
lamina | rigid duct
tubo de lamina | rigid duct
ducto de lamina | rigid duct
galvanizado | rigid duct
tubo galvanizado | rigid duct
espiral | spiral
codo | elbow
codos | elbows
curva | elbow
curvas | elbows
vuelta | elbow
vueltas | elbows
sin codos | no elbows
sin vueltas | no elbows
sin curvas | no elbows
ningun codo | no elbows
salida de techo | roof cap
salida techo | roof cap
salida por el techo | roof cap
salida al techo | roof cap
salida en el techo | roof cap
sale por el techo | roof cap
tapa de techo | roof cap
sombrero | roof cap
campana de techo | roof cap
salida de pared | wall cap
salida pared | wall cap
salida por la pared | wall cap
salida a la pared | wall cap
sale por la pared | wall cap
tapa de pared | wall cap
campana de pared | wall cap
alero | soffit
sofito | soffit
salida de alero | soffit vent
reduccion | reducer
reductor | reducer
estirado | stretched
bien estirado | pulled tight
flojo | sagging
suelto | sagging
atico | attic
desvan | attic
entretecho | attic
afuera | outside
humedad | humidity
casa | house
humedad de la casa | house humidity
cable | cable
cables | cables
alambre | wire
alambres | wires
hilos | wires
conductores | conductors
con tierra | with ground
y tierra | with ground
con tierras | with grounds
mas tierra | with ground
sin tierra | no ground
tierra | ground
tierras | grounds
apagador | switch
apagadores | switches
interruptor | switch
interruptores | switches
llave de luz | switch
contacto | receptacle
contactos | receptacles
tomacorriente | receptacle
enchufe | receptacle
temporizador | timer
timer | timer
reloj | timer
sensor de humedad | humidity sensor
atenuador | dimmer
dimmer | dimmer
abrazadera | clamp
abrazaderas | clamps
sin abrazaderas | no clamps
grapas | clamps
conector | clamp
conectores | clamps
caja | box
cajas | box
cuadrada | square
octagonal | octagon
octogonal | octagon
redonda | round
de plastico | plastic
plastica | plastic
de metal | metal
metalica | metal
sencilla | single gang
doble | double gang
calibre | gauge
numero |
disyuntor | breaker
breaker | breaker
pastilla | breaker
circuito | circuit
circuito propio | dedicated circuit
neutro | neutral
sin neutro | no neutral
electricista | electrician
necesita gfci | need a gfci
gfci | gfci
encima de la ducha | over the shower
encima de la regadera | over the shower
sobre la ducha | over the shower
sobre la regadera | over the shower
arriba de la regadera | over the shower
arriba de la ducha | over the shower
encima de la tina | over the tub
sobre la tina | over the tub
se puede poner | can I put
puedo poner | can I put
se permite | allowed
permitido | allowed
calefactor | heater
calentador | heater
con luz | with light
luz | light
empaque | carton
caja dice | carton says
etiqueta | label
necesito | needed
ocupo | needed
necesita | needs
ocupa | needs
ventilacion | airflow
alcanza | enough
bajo cero | below freezing
bajo 0 | below freezing
se necesita | needed
lleva | needs
requiere | requires
pide | needs
hace falta | needed
minimo | minimum
da | delivers
dando | delivering
entrega | delivers
mueve | moves
moviendo | moving
saca | moves
entregado | delivered
entregados | delivered
de verdad | really
reales | actual
real | actual
velocidad | speed
velocidades | speeds
ventanas |
perdon | no wait
no perdon | no wait
digo | no wait
mejor dicho | no wait
no espera | no wait
espera | no wait
corrijo | no wait
de largo | long
largo | long
de ancho | wide
ancho | wide
de alto | high
alto | high
despues de banarse | after shower
despues de la ducha | after shower
despues de la regadera | after shower
despues de un bano | after shower
dejo | leave
dejar | leave
dejo el ventilador | leave the fan on
dejo el extractor | leave the fan on
dejo prendido | leave on
prendido | on
encendido | on
y | and
e | and
o | or
con | with
sin | no
no | no
ningun | no
ninguna | no
hasta | to
para | for
cada uno | each
metros |
pies |
pulgadas |
`;

/** Words that say nothing of their own. */
const small =
  'a al ahi alguna alguno algun alla alli ahora amigo andar anda ande ante aqui asi aun bien buenas buenos bueno cada como compa correr corro cual cuales cuando cuanta cuantas cuanto cuantos da de debe debo deberia del desde dia dias dice dicen donde el ella ellos en entonces entre era es esa ese eso esos esta estan estar este esto favor fue gracias ha hace hacer han has hay he hola ir jefe la las le les lo los llegar llevar llega llego mas me mi mis mira muy nada ni nos o oiga oye otra otro pa para pero poco pon ponemos poner pongo por porque pregunta puede pueden puedo pues que quiere quiero queda quedan sale salen se sea segun ser si sobre solo son su sus tambien tan te tener tengo tenemos tiene tienen toda todas todo todos tu un una unas uno unos usar uso va vamos van voy ya yo tardes dias noches meto meter metido trae traen viene vienen instalar instalo instalamos maestro porfa nomas nada ocupamos queremos necesitamos adentro dentro hacia largo nuevo nueva viejo vieja chico chica grande mas menos patron principal conecte lejos vez abajo aunque dejan deja ayer hoy anoche banarse llene lleno dime medio despues rato tramo recorrido recto muebles lleno llena lleno tarda tardo bajo frio caliente quiero saber senor senora jefe cuenta sirve seria numero marca nominal'.split(
    ' ',
  );

/** What each phrase is in English, by its words. */
export const phrases: ReadonlyMap<string, string> = new Map([
  ...small.map((word): [string, string] => [word, '']),
  ...`${asking}${complaining}${said}`
    .trim()
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line): [string, string] => {
      const [phrase = '', english = ''] = line.split('|').map((part) => part.trim());
      return [phrase, english];
    }),
]);

/** The most words a phrase has. */
export const longestPhrase = Math.max(...[...phrases.keys()].map((phrase) => phrase.split(' ').length));

/** Words of these phrases that are English too, or a name, and so do not show that a line is Spanish. */
export const alsoEnglish: ReadonlySet<string> = new Set(
  'a al as natural boiler breaker circuit come conductor conductores dimmer do e el en es flex flexible foil gfci has he jacuzzi la las le los me mi no o pa plafon real reales sensor solo son su te timer tu van wc y ya yo si se sea ser sin real era fue ha han hay ir pon con de del dia para por que un una lo mas nos ni da doble espiral espera tan toda todo todos cable cables'.split(
    ' ',
  ),
);
