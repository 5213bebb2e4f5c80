/** The ways of asking in Spanish, by command, each with the words the English reader knows. No accents. */
export const asking = `
que me da | what do I get
que da | what do I get
cuanto me da | what do I get
cuanto da | what do I get
cuanto va a dar | what do I get
cuanto aire da | what do I get
cuanto aire me da | what do I get
cuanto saca | what do I get
cuanto aire saca | what do I get
cuanto entrega | what do I get
cuanto mueve de verdad | what do I get
cuanto mueve | what do I get
que sale | what do I get
cuanto sale | what do I get
que caudal da | what do I get
que caudal me da | what do I get
que obtengo | what do I get
cuanto aire | how much air
cuanto caudal | how much airflow
que caudal | what airflow
cuantos cfm | how many cfm
que cfm | what cfm
cuanto cfm | how many cfm
que tamano de extractor | what size fan
que tamano de ventilador | what size fan
de que tamano | what size
que extractor | what size fan
que ventilador | what size fan
de cuanto el extractor | what size fan
hasta donde | how far can I go
que tan lejos | how far can I go
lo mas lejos | how far can I go
que tan largo | how far can I go
cuanto puedo correr | how far can I go
cuantos pies puedo | how far can I go
cuantos metros puedo | how far can I go
largo maximo | maximum length
maximo | maximum
viga | joist
vigas | joists
longitud maxima | maximum length
maximo de ducto | maximum length of duct
cual es el maximo | maximum length
cuanto tiempo | how long leave it running
por cuanto tiempo | how long leave it running
cuantos minutos | how many minutes
cuanto lo dejo | how long leave it running
cuanto rato | how long leave it running
cuanto tarda en secar | how long to dry
cuanto tarda | how long to clear
se va a sudar | will it sweat
va a sudar | will it sweat
suda | sweat
sudar | sweat
sude | sweat
sudando | sweat
condensa | condensation
condensar | condensation
condensacion | condensation
que aislante | what insulation
cuanto aislante | what insulation
aislante | insulation
aislamiento | insulation
sin aislante | uninsulated
sin aislar | uninsulated
sin aislamiento | uninsulated
aislado | insulated
forrado | insulated
cabe | fit
caben | fit
se pasa | too full
demasiado llena | too full
llenado de caja | box fill
cuenta de la caja | box fill
cuanto cuesta | how much does it cost to run
cuanto gasta | how much does it cost to run
cuanto cuesta al ano | how much does it cost a year
al ano | a year
por ano | a year
recibo | bill
cuesta | costs
que materiales | parts list
lista de materiales | parts list
lista de piezas | parts list
que piezas | parts list
que compro | what do I buy
que extractor compro | what size fan
que extractor pongo | what size fan
que hay que comprar | what do I buy
que tengo que comprar | what do I buy
que llevo | what do I bring
materiales | materials
plan completo | whole job plan
planear todo | plan the whole job
todo el trabajo | whole job
`;
