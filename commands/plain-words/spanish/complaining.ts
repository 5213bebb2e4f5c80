/** What customers say is wrong, each with the words the English reader knows. No accents. */
export const complaining = `
el cliente dice | customer says
la senora dice | customer says
el senor dice | customer says
el inquilino dice | tenant says
cliente | customer
vapor | steam
espejo | mirror
semana pasada | last week
desde | since
cuantos litros por segundo | how many l/s
suficiente aire | enough make-up air
suficiente | enough
aire | air
prender | run
caudal | airflow
se queja | complains
ruido | noise
hace ruido | noisy
ruidoso | noisy
hace mucho ruido | loud
suena fuerte | loud
suena muy fuerte | loud
suena feo | noisy
suena raro | weird noise
suena mucho | loud
zumba | hums
chilla | squeals
rechina | squeaks
vibra | vibrates
traquetea | rattles
no jala | no suction
no saca | weak
no extrae | weak
jala poco | weak
no prende | doesn't work
no enciende | doesn't work
no funciona | doesn't work
no gira | doesn't spin
no arranca | doesn't start
se apaga solo | turns itself off
espejo empanado | mirror fogged
se empana el espejo | mirror fogs
el espejo se empana | mirror fogs
se empana | fogs
empanado | fogged
moho | mold
hongo | mold
huele | smells
huele mal | smells
olor | smell
gotea | dripping
goteando | dripping
entra frio | cold air
aire frio | cold air
entra aire frio | cold air coming in
medidos | measured
prueba | test
llevo | bring
se dispara | trips
se bota | trips
mancha | stain
manchas | stains
`;
