/** Common words that are near a word of the trade and are not one of its slips. */
export const plainWords = `
well feel feed fell fall call tall ball mall hall full fully fuel fool told hold cold cool could good food wood mood door floor poor pool tool
than that then them they this there these those their where were here have has had been being from when while which who whom whose why
just like likes look looks make makes made take takes took taken give gives given goes going gone come comes came back both best rest next last
past part parts party port sort short shirt shot shop show shows shown slow low own down town and any all are ask but can did for get got her him his
its let may new nor not now off old one our out own per put ran saw say see set she sir six ten the too try two use via was way yes yet you your
bad bit big bill call case cast cost dont doing done each easy else even ever every few find fine fits first four free gets guess guys hard head help hour idea into job keep kept kind
know late later least left less line list live load local lost lots main master match mean means might mind more most move much must name near never nice night
number okay once only open order other over page people piece plan please point pretty put quick quite rate read ready real right
said same says seems sell sent side since sits size some soon spot still such sure swap swear takes talk team tell tenant tends thanks thing think third tight time tiny today
told tomorrow top total trick true turn type unit until upstairs upper used using usual very view wait walk want wants warm wash week went west what wide wife window winter wire wish wonder
word work works world worse worth wrong year years yet ideas till flip flips happy unhappy sensible steady stay stays shaft share shared shelf stall stable start started state step stick stop store story
story strong stuff style summer sun super swears table neighbor neighbour cooking condo board somebody someone customer customers builder inspector owner whenever nobody leaving punch monster
hoping fatter bigger smaller honest honestly across around about above below between behind along against almost already also always another because believe better
basically carpet supposed enough either ends end enter exact except existing extra face fact fair family fast field flat flue folks forget form found front gave
lead leads light lights lot maid mate most mould needed noise north notice opened pack paid pain paper pass path pick picked place plain plus pulls push pushes quiet rain
ran rest rises safe save school seal sealed second series serve sheet ship sign simple sink site slopes small snow sold south space stand stays suit supply surface
tape task tech test tile tiles today tone toward trim truck trunk twice unless upon vent vents vented waste weather whole within wont worry write yard zero heads morning
crew scrunched maybe thirty forty fifty loss lose lower lets latch lift leak leaks meets meet mess mile mine mini miss moist month wet
flat float flame flash fresh fridge frame gate gas gets glass grab great green grey guest guide happen heat heats heated height hello holds hose hot hung hurt ice
showed showing shower's kitchen quick quickly bought built reads readout hook hooked hooks hang hung says sold comes mounted mount mounts install installs installed swapped swap
keeps key kid kids kit knob knew landing large laundry law layer lean learn house houses mouse rule rules rude ripe rope role cup cut cat car cop tap map lap gap nap rap
weight caution working decides text fire electrical band trips trip tripped tripping drips lamp lamps lit file garage gear mold molds moldy mould
carbon dust reading electronic joints section home width switched round ground early test core log long louder proof roof isolation unvented film glow
cutting term fail stretch moved wired black sealing setting drip docs clack timed seam present conversation send sent bent connections connector
screwed alter after stalled peeling pulling plaster calling largest pest glows closing steamy sheathing clamped bars bar kill root trap smelled sums
oil rubbing thermal leaky dries skipped cord boot strings hump base crossing rater wording rattling broom soot mend pinch raining separated odor odors
hill though steal shell coat wound isolated fires ranking delivery ill hair felt winding cycling matters insulate letting stepped squeezes rushing
bang bangs dip dusty musty eave eaves drafty weed blown writing bond tingle fold nearly cone perfect efficiency mode grounded tail post cell dated
tiger literal storage stack stacks stuck struck truck rig rings ring ran rang bring brings brought buy bought boss block bolt book born bottle bowl
brick bright broke broken brown build building burn burning burnt busy butter cable camera card cards care carry cause causes caught center centre
chair chance change changed charge check checked child choose clean clear cleared clears clip clock cloud club coffee colour color come common
complete concern connect contact cook cooked copper copy corner correct count country couple course cover cracked cracks create crew cross crowd cry
cure curtain damp danger dark dead deal dealer decent den dent desk detail dirty dish distance dog door doubt drag drain drafts drill drop dropped dry
dual due dull dump each ear ease east edge edges effect either else empty end energy engine error event exact exhaust expect fade fan farm fault
favour fear fed fence fight figure filter filters find fine finger finish finished first fish fit fitted fix fixed flap flapper flaps flaws flicker
flickers floor folks follow food force forgot frost front frozen full fuss gable gasket gauge general gets girl give glad glue gone gravity grease
grew grind grinds grinding group grow guard gutter habit hand handle hangs hard hate having hear heard hearing heater heavy held helper hide higher
hit hits hole holes hood hoping hour hot huge human hurry icy idle impossible indeed issue item items jammed joist jump just keep kick kicks kind
kitchen knock knows label ladder lady lapse latest laugh laundry lay leads leaf leaving leg legs lesson letter level lifts lights likely liked limited
lint lists loads loan locked loop loose loud loudest louvre lower lucky lumber machine magnet mail make manual many mark mason massive matter maybe
meal meant melt memory metal meter middle minor mirror mistake mixed model modern moist moisture monday money months mostly motion motor motors mount
mouth moving music nail nails name narrow near neat neck need needed nerve newer noise noises nobody none nor normal nose note nothing numb nut nuts
occurs odd off offer office often opening option options orange ordered original others ought outer owner owners painted panels parking past patch
pattern pause paying people permit phone photo photos piece pieces pilot pink pipe pipes pitch place placed plain plan plate plug plugs plumber pocket
point poles porch possible pound power pressed prevent prime print problem proper properly protect proud prove purple push quality quarter quietly
quit rafter rafters raise range rapid rarely rather reach real reason recent record red register relay remember remove removed rent repair replace
replaced report reports request reset resets rest result returns review rich ride rising risk road rocks rolled roofer rooms roughly routine row
rubber rush rust rusty sad safely safety sale sample sand saturday sauna saved saving scale scared school scratch screw seat second secure sees seemed
select sense serious service sets seven several shake shakes shaking shape sheet shelf shingle shingles ships shock shoe shop shorted shots should
shoulder shout shut shuts shutting side siding signal silent silver simply single sister site skin sky slab slap sleep sleeve slide slight slip slot
slowed slower smart smelly smoke smoked snap snow soaked soap soaking socket soft soil somehow sorry sort sounds sour space spare spark sparks speak
special spend spin spins split spoke sponge spray spread spring sprung squeak squeaks stage stain stains stair stairs stand starts stayed steel steep
steps stick sticks sticky stiff stock stone stood stops storm story straight strange strap straps street string strip strips stub stud studs stuff sub
such sudden suggest sure surge swap sweep swing swollen system table tabs tape taped taste tee temp tenants tends thick thin thought threw throat
through throw thumb ticket tied tight tightly timber tired title toasty together toggle tone tools tooth topic touch tough tower town track trade
train transfer tree trick tried trim trouble truth tube tune turned turns twist types unable under unhook unit units unplug unsafe unusual update
upper upset upstairs vacant value vanity vapor vapour various vault vaulted verify via vinyl visit voice void volt volts voltage wait wake walk walked
wanted warning warped warranty wash waste watch watched wave weak wear weeks weird welcome whistle whistles whistling white whole wide widow wild wind
winds windy wipe wise wishes within woke woman wood wooden wore worked worker worried worry wrapped wrist write wrote yard yellow yesterday young
yours zone attached adding added address advice advise agree ahead alarm allow alone amount angle answer anybody anyone anything appear apply approve
area arrive aside attach avoid awful baby backward bare basement basic basket beam became become bedroom bedrooms begin behind below bench bend beside
better birds bird bitter blame blank blast bleach blew blocks blower blows board body booster boosted boots bore bother bounce boxes branch brand
break breath breeze bucket budget bug bugs bulb bulbs bump bunch bundle button vibrating vibration hummed buzz buzzes buzzing squealing squeals
squeaking chirp chirps clicks clicking clatter rattled roaring whining odour scorched shorts shocked sparked condo duplex trailer cabin cottage barn
shed lobby closet hallway attic crawl soffits fascia truss trusses drywall sheetrock caulk sealant sealer mastic hanger hangers hanging bracket
brackets today's tonight afternoon evening weekend january february march april june july august september october november december winter summer
autumn fall rain rains snowing freezing freezes froze frosty icicle icicles retired estimate estimates invoice quoted contractor manager landlord
landlady homeowner resident residents guests inspector's realtor buyer seller neighbors neighbours kids children family wife husband mother father
grandma
cooling nest test chat wider louvered steamed starved dies bathtub prince
hat had bat mat pat rat sat fat eat tea sea jam ham ram bag beg bog bug fun fin ban man pan tan van wan can den men pen hen boy toy joy buy guy lay pay ray
during around allowed happens actual goes sits house's says they've sounds reaches average bottom closer closest code codes coming compare compared correct double drawn drive else's equal favor grill grilled guessing handle horizontal vertical kinda lately mostly nights oven paint panel pretty quote replaced replacing return returns second self sense short shorter single sitting sloped slopes smart smooth straight swapped trying turning twelve under venting vertical waiting walls wires works dryers wetter drier days dry sags sag tube cube cubes tubes pulls hears sees tried cheap neat seat beat meat deep depth sharp share
`
  .trim()
  .split(/\s+/);
