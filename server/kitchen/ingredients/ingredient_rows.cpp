// The table of ingredients, a line each:
//
//   name | also called | section | source | contents | grams per measure
//
// Also called: "~" before a word that several kinds share; this is the usual one.
// Source: "SR" and the NDB number of the USDA Standard Reference (WEIGHT table,
// 2013), read there; "M": from memory, to be verified.
// Contents: allergens and animal origin. "word?": may hold it; "?": depends on
// the maker, read the label. Contents are from memory throughout.
// Measures: US household measures and pieces, then the form it is measured in;
// "*": from memory where the rest of the row is read. A measure without a form
// holds when none is said. Measures are weighed one by one, not scaled.
#include "server/kitchen/ingredients/ingredient_table.h"

namespace suppertide::kitchen {

std::string_view ingredientRows() {
  return R"(
all-purpose flour|all purpose flour,plain flour,~flour,~white flour,~wheat flour|baking|SR 20081|wheat|cup 125; cup sifted 115*; tbsp 8*
bread flour|strong white flour,strong flour,white bread flour|baking|SR 20083|wheat|cup 137
cake flour||baking|SR 20084|wheat|cup 137; cup unsifted 137
self-rising flour|self-raising flour|baking|SR 20082|wheat|cup 125
whole wheat flour|wholemeal flour,whole-wheat flour,whole grain flour|baking|SR 20080|wheat|cup 120
dark rye flour|wholemeal rye flour,~rye flour|baking|SR 20063|rye|cup 128
medium rye flour||baking|SR 20064|rye|cup 102
spelt flour|white spelt flour,wholemeal spelt flour|baking|M|spelt|cup 120
rice flour|white rice flour|baking|SR 20061||cup 158
potato flour||baking|SR 11413||cup 160
potato starch||baking|M||cup 160; tbsp 10
buckwheat flour||baking|M|?|cup 120
almond flour|ground almond,almond meal|baking|M|almond|cup 96
semolina||baking|M|wheat|cup 167
masa harina||baking|M||cup 114
spelt grain|spelt|dry|SR 20140|spelt|cup 174
cornmeal|polenta,yellow cornmeal|baking|SR 20020||cup 122
cornstarch|cornflour,corn starch|baking|SR 20027||cup 128; tbsp 8*
oat bran||dry|SR 20033|oats|cup 94
rolled oats|oats,oatmeal,porridge oats|dry|SR 08120|oats|cup 81
long-grain rice|~rice,~white rice,long grain rice,long-grain white rice|dry|SR 20044||cup 185; cup cooked 158*
brown rice|long-grain brown rice|dry|SR 20036||cup 185
medium-grain rice|risotto rice,arborio rice|dry|SR 20450||cup 195
cooked rice||dry|SR 20445||cup 158
wild rice||dry|SR 20088||cup 160
quinoa||dry|SR 20035||cup 170
pearl barley|barley,pearled barley|dry|SR 20005|barley|cup 200
bulgur|bulgur wheat|dry|M|wheat|cup 140
couscous||dry|M|wheat|cup 173
buckwheat groats|buckwheat|dry|M|?|cup 164
breadcrumbs|dry breadcrumbs,bread crumbs|dry|M|?,wheat|cup 108
pasta|macaroni,penne|dry|M|wheat,egg?|cup 105
granulated sugar|~sugar,white sugar,caster sugar,superfine sugar|baking|SR 19335||cup 200; tsp 4.2; tbsp 12.5*
brown sugar|light brown sugar,dark brown sugar|baking|SR 19334||cup packed 220; cup loose 145; tsp packed 4.6; tsp loose 3
powdered sugar|icing sugar,confectioners sugar,confectioner's sugar|baking|SR 19336||cup unsifted 120; cup sifted 100; tbsp unsifted 8; tsp 2.5
pearl sugar||baking|M||cup 190
honey||baking|SR 19296|honey|cup 339; tbsp 21
molasses|treacle,black treacle|baking|SR 19304|sulphite?|cup 337; tbsp 20
maple syrup||baking|SR 19353||cup 315; tbsp 20
corn syrup|light corn syrup|baking|SR 19350||cup 341; tbsp 22
golden syrup||baking|M||cup 340; tbsp 21
sugar syrup|simple syrup|baking|M||cup 310
cocoa powder|cocoa,unsweetened cocoa,unsweetened cocoa powder|baking|SR 19165||cup 86; tbsp 5.4
semisweet chocolate chips|~chocolate chips|baking|SR 19080|?|cup 168; cup large 182; cup mini 173
dark chocolate|bittersweet chocolate,~chocolate|baking|M|?|
milk chocolate||baking|M|?,milk,lactose|
baking powder|double-acting baking powder|baking|SR 18369|?|tsp 4.6; tbsp 13.8*
baking soda|bicarbonate of soda,bicarbonate soda|baking|SR 18372||tsp 4.6
cream of tartar||baking|SR 18373||tsp 3
active dry yeast|dry yeast,dried yeast,~yeast|baking|SR 18375||tsp 4; tbsp 12; packet 7.2
instant yeast|fast-action yeast|baking|M||tsp 3.1; packet 7
fresh yeast|compressed yeast|baking|SR 18374||cake 17
gelatin powder|gelatine powder,gelatin,gelatine,powdered gelatin|baking|SR 19177|gelatine|envelope 7; packet 7*; tbsp 7
leaf gelatin|leaf gelatine,gelatine leaf|baking|M|gelatine|sheet 2
agar|agar-agar,agar powder|baking|M||tsp 2
table salt|~salt,fine salt,sea salt fine|spices|SR 02047||tsp 6; tbsp 18; cup 292
coarse salt|kosher salt,flaky salt,sea salt|spices|M||tsp 4
vanilla extract|~vanilla|baking|SR 02050|alcohol|tsp 4.2; tbsp 13; cup 208
almond extract||baking|M|?,alcohol|tsp 4.2
vanilla bean|vanilla pod|baking|M||piece 3
ground cinnamon|cinnamon|spices|SR 02010||tsp 2.6; tbsp 7.8
cinnamon stick||spices|M||piece 3
black pepper|~pepper,ground black pepper,peppercorn,black peppercorn|spices|SR 02030||tsp ground 2.3; tbsp ground 6.9; tsp whole 2.9; tsp 2.3*
white pepper||spices|M||tsp 2.4
ground sage|dried sage|spices|SR 02038||tsp 0.7; tbsp 2
dried thyme||spices|SR 02042||tsp 1; tbsp 2.7; tsp ground 1.4; tbsp ground 4.3
thyme|fresh thyme|produce|M||sprig 1; tsp 0.8
dried oregano|oregano|spices|M||tsp 1
paprika|sweet paprika|spices|M||tsp 2.3; tbsp 6.8
smoked paprika||spices|M||tsp 2.3
cumin|ground cumin,cumin seed|spices|M||tsp 2.1
ground coriander|coriander seed|spices|M||tsp 1.8
ground ginger||spices|M||tsp 1.8
nutmeg|ground nutmeg|spices|M||tsp 2.2
clove spice|ground cloves,whole cloves|spices|M||tsp 2.1
cardamom|ground cardamom|spices|M||tsp 2
turmeric|ground turmeric|spices|M||tsp 3
caraway|caraway seed|spices|M||tsp 2.1
fennel seed||spices|M||tsp 2
juniper berries||spices|M||tsp 2
bay leaf|bay leaves|spices|M||leaf 0.2
chili flakes|red pepper flakes,chilli flakes|spices|M||tsp 1.8
chili powder|chilli powder|spices|M|?|tsp 2.7
curry powder||spices|M|?|tsp 2
celery salt||spices|M|celery|tsp 5
poppy seeds|poppy seed|spices|M||tsp 2.8; tbsp 8.8
mustard powder|dry mustard,ground mustard|spices|M|mustard|tsp 2
mustard|dijon mustard,prepared mustard|dry|M|mustard,?|tsp 5; tbsp 15
unsalted butter|~butter,sweet butter|dairy|SR 01145|milk,lactose|cup 227; tbsp 14.2; stick 113
salted butter||dairy|SR 01001|milk,lactose|cup 227; tbsp 14.2; stick 113
ghee|clarified butter|dairy|M|milk|cup 205; tbsp 12.8
margarine||dairy|SR 04610|?|cup 227; tbsp 14; tsp 4.7; stick 113
lard||dairy|SR 04002|pork|cup 205; tbsp 12.8
vegetable shortening|shortening|baking|M|?|cup 205; tbsp 12.8
olive oil|extra virgin olive oil|dry|SR 04053||cup 216; tbsp 13.5; tsp 4.5
soybean oil|soya oil|dry|SR 04044|soy|cup 218; tbsp 13.6; tsp 4.5
rapeseed oil|canola oil|dry|M||cup 218; tbsp 14; tsp 4.5
sunflower oil|~neutral oil|dry|M||cup 218; tbsp 13.6; tsp 4.5
vegetable oil|~oil|dry|M|soy?|cup 218; tbsp 13.6; tsp 4.5
sesame oil||dry|M|sesame|cup 218; tbsp 13.6; tsp 4.5
coconut oil||dry|M|coconut|cup 218; tbsp 13.6
mayonnaise||dry|SR 04025|egg,?|cup 220; tbsp 13.8
whole milk|~milk|dairy|SR 01077|milk,lactose|cup 244; fl oz 30.5; tbsp 15; quart 976
reduced-fat milk|semi-skimmed milk,2% milk,2 % milk|dairy|SR 01079|milk,lactose|cup 244; quart 976
skim milk|skimmed milk,nonfat milk|dairy|M|milk,lactose|cup 245
lactose-free milk||dairy|M|milk|cup 244
buttermilk||dairy|SR 01088|milk,lactose|cup 245; quart 980
heavy cream|~cream,whipping cream,heavy whipping cream,double cream|dairy|SR 01053|milk,lactose|cup 238; cup whipped 120; tbsp 15
half-and-half|half and half,single cream,light cream|dairy|SR 01049|milk,lactose|cup 242; tbsp 15
sour cream|soured cream|dairy|SR 01056|milk,lactose|cup 230; tbsp 12
creme fraiche|crème fraîche|dairy|M|milk,lactose|cup 230; tbsp 14
cream cheese||dairy|SR 01017|milk,lactose,rennet?|cup 232; tbsp 14.5
yogurt|plain yogurt,yoghurt,plain yoghurt|dairy|SR 01116|milk,lactose,gelatine?|cup 245
greek yogurt|greek yoghurt,strained yogurt|dairy|M|milk,lactose,gelatine?|cup 245
milk powder|dry milk,nonfat dry milk,dried milk|dairy|SR 01091|milk,lactose|cup 120
evaporated milk||dairy|M|milk,lactose|cup 252
sweetened condensed milk|condensed milk|dairy|M|milk,lactose|cup 306
oat milk|oat drink|dairy|M|oats,?|cup 240
soy milk|soya milk|dairy|M|soy|cup 243
coconut milk||dry|M|coconut,sulphite?|cup 226
cheddar|cheddar cheese|dairy|SR 01009|milk,lactose,rennet?|cup shredded 113; cup diced 132; cup melted 244
parmesan|parmesan cheese,parmigiano|dairy|SR 01032|milk,rennet,egg?|cup grated 100; tbsp grated 5
mozzarella|mozzarella cheese|dairy|SR 01026|milk,lactose,rennet?|cup shredded 112
gruyere|gruyère|dairy|M|milk,rennet|cup shredded 108
feta|feta cheese|dairy|M|milk,lactose,rennet?|cup crumbled 150
ricotta||dairy|M|milk,lactose,rennet?|cup 246
fresh curd cheese|curd cheese,quark|dairy|M|milk,lactose,rennet?|cup 225
goat cheese|goat's cheese,soft goat cheese|dairy|M|milk,lactose,rennet?|
egg|whole egg|dairy|SR 01123|egg|large 50; extra large 56; jumbo 63; medium 44; small 38; cup 243
egg white||dairy|SR 01124|egg|large 33; cup 243
egg yolk|yolk|dairy|SR 01125|egg|large 17; cup 243
almonds|almond|baking|SR 12061|almond|cup whole 143; cup sliced 92; cup slivered 108; cup ground 95
pecans|pecan|baking|SR 12142|pecan|cup chopped 109; cup halves 99
walnuts|walnut,english walnut|baking|SR 12155|walnut|cup chopped 117; cup ground 80; cup halves 100; cup pieces 120
hazelnuts|hazelnut,filbert|baking|SR 12120|hazelnut|cup chopped 115; cup ground 75; cup whole 135
pine nuts|pine nut|baking|M|pine nut|cup 135; tbsp 8.6
cashews|cashew|baking|M|cashew|cup 130
pistachios|pistachio|baking|M|pistachio|cup 123
peanuts|peanut|baking|M|peanut|cup 146
chestnuts|chestnut|produce|M|chestnut|
desiccated coconut|shredded coconut,coconut|baking|M|coconut,sulphite?|cup 85
sesame seeds|sesame seed|baking|SR 12023|sesame|cup 144; tbsp 9
tahini||dry|M|sesame|tbsp 15; cup 240
sunflower seeds|sunflower seed|baking|M||cup 140
pumpkin seeds|pumpkin seed|baking|M||cup 129
flaxseed|linseed,flax seed|baking|M||tbsp 10.3
chia seeds|chia seed|baking|M||tbsp 12
peanut butter|smooth peanut butter|dry|SR 16098|peanut,?|cup 258; tbsp 16*
raisins|raisin,sultana,seedless raisin|baking|SR 09298|sulphite?|cup 145; cup packed 165
dried apricots|dried apricot|baking|M|sulphite|cup 130
dates|date|baking|M|sulphite?|cup chopped 147; piece 8
cranberries|cranberry,fresh cranberry|produce|SR 09078||cup whole 100; cup chopped 110
dried cranberries|dried cranberry|baking|M||cup 120
onion|~yellow onion,white onion,brown onion|produce|SR 11282||cup chopped 160; cup sliced 115; tbsp chopped 10; large 150; medium 110; small 70
red onion||produce|M||medium 110
shallot||produce|M||piece 30; tbsp chopped 10
spring onion|scallion,green onion|produce|M||piece 15; cup chopped 100
leek||produce|M||piece 90; cup sliced 89
garlic||produce|SR 11215||cup 136; tsp 2.8; clove 3
ginger|fresh ginger,ginger root|produce|M||tbsp grated 6; tsp grated 2
celery|celery stalk|produce|SR 11143|celery|cup chopped 101; tbsp 7.5; stalk 40; stalk large 64; stalk medium 40; stalk small 17
celeriac|celery root|produce|M|celery|cup 156
carrot||produce|SR 11124||cup chopped 128; cup grated 110; cup sliced 122; large 72; medium 61; small 50
potato|floury potato,waxy potato|produce|SR 11352||cup diced 150; large 369; medium 213; small 170
sweet potato||produce|SR 11507||cup cubed 133; medium 130
green beans|green bean,french bean|produce|SR 11052||cup 100
canned pumpkin|pumpkin puree,pumpkin purée|dry|SR 11424||cup 245
squash|small squash,butternut squash|produce|M||cup cubed 140
apple|cooking apple|produce|SR 09003||cup chopped 125; cup sliced 109; large 223; medium 182; small 149
pear||produce|M||medium 178
orange||produce|M||medium 131
lemon||produce|M||medium 84
lime||produce|M||medium 67
banana||produce|M||medium 118
strawberries|strawberry|produce|M||cup 152
raspberries|raspberry|produce|M||cup 123
blueberries|blueberry|produce|M||cup 148
rhubarb||produce|M||cup diced 122
tomato||produce|M||medium 123; cup chopped 180
canned tomatoes|canned tomato,tinned tomato,chopped tomato canned|dry|M||cup 240
tomato paste|tomato purée|dry|M||tbsp 16
cucumber||produce|M||piece 300; cup sliced 104
bell pepper|sweet pepper,red pepper,green pepper|produce|M||medium 119
mushrooms|mushroom,button mushroom|produce|M||cup sliced 70
spinach|fresh spinach|produce|M||cup 30
cabbage|white cabbage|produce|M||cup chopped 89
kale||produce|M||cup chopped 67
broccoli||produce|M||cup chopped 91
cauliflower||produce|M||cup chopped 107
beetroot|beet|produce|M||piece 82; cup sliced 136
oat cream|oat cooking cream|dairy|M|oats|
swede|rutabaga|produce|M||cup cubed 140
parsnip||produce|M||cup sliced 133
turnip||produce|M||cup cubed 130
peas|pea,green pea,frozen pea|frozen|M||cup 145
sweetcorn|corn kernel,sweet corn|frozen|M||cup 145
parsley|flat-leaf parsley|produce|M||cup chopped 60; tbsp chopped 3.8
dill|fresh dill|produce|M||cup 9; tbsp chopped 2
basil|fresh basil|produce|M||cup chopped 42
chives|chive|produce|M||tbsp chopped 3
rosemary|fresh rosemary|produce|M||tbsp chopped 1.7; sprig 2
mint|fresh mint|produce|M||tbsp chopped 3
sage|fresh sage|produce|M||leaf 0.3
lentils|lentil,green lentil,brown lentil|dry|SR 16069||cup 192; tbsp 12
chickpeas|chickpea,dried chickpea|dry|SR 16056||cup 200; tbsp 12.5
kidney beans|kidney bean|dry|M||cup 184
white beans|white bean,cannellini bean|dry|M||cup 202
tofu||produce|M|soy|cup 252
chicken stock|chicken broth|dry|SR 06172|poultry,?|cup 240
beef stock|beef broth|dry|M|beef,?|cup 240
vegetable stock|vegetable broth|dry|M|?|cup 240
soy sauce|soya sauce|dry|M|soy,wheat|tbsp 16; tsp 5.3
worcestershire sauce||dry|M|fish,?|tsp 5.7
fish sauce||dry|M|fish|tbsp 18
cider vinegar|apple cider vinegar,~vinegar|dry|SR 02048|sulphite?|cup 239; tbsp 14.9; tsp 5
wine vinegar|red wine vinegar,white wine vinegar|dry|M|sulphite|tbsp 14.9; cup 239
balsamic vinegar||dry|M|sulphite|tbsp 16
lemon juice|fresh lemon juice|produce|SR 09152|sulphite?|cup 244; lemon 48
orange juice||drinks|M||cup 248
water|tap water,cold water,warm water,lukewarm water,boiling water,hot water|drinks|SR 14429||cup 237; fl oz 29.6
red wine|~wine|drinks|M|alcohol,sulphite,?|cup 235
white wine|dry white wine|drinks|M|alcohol,sulphite,?|cup 235
beer|ale|drinks|M|alcohol,barley|cup 237
cider|dry cider,hard cider|drinks|M|alcohol,sulphite?|cup 238
brandy|cognac|drinks|M|alcohol|tbsp 14
coffee|strong coffee|drinks|M||cup 237
turkey|whole turkey|meat|M|poultry|
chicken|whole chicken,chicken breast,chicken thigh|meat|M|poultry|
duck||meat|M|poultry|
goose||meat|M|poultry|
ground beef|minced beef,beef mince|meat|M|beef|
beef|beef chuck,stewing beef,rib roast|meat|M|beef|
pork|pork shoulder,pork loin|meat|M|pork|
bacon|streaky bacon|meat|M|pork|slice 28
ham|cooked ham|meat|M|pork,?|
sausage|sausages|meat|M|?|
lamb|lamb leg,leg of lamb|meat|M|lamb|
salmon|salmon fillet|meat|M|fish|
cod|cod fillet|meat|M|fish|
trout|lake trout,lake trout fillet,trout fillet|meat|M|fish|
smoked salmon||meat|M|fish|
anchovy|anchovy fillet|dry|M|fish|piece 4
tuna|canned tuna|dry|M|fish|
shrimp|prawn|meat|M|crustacean|
crab|crab meat|meat|M|crustacean|cup 135
lobster||meat|M|crustacean|
mussels|mussel|meat|M|mollusc|
oysters|oyster|meat|M|mollusc|
squid|calamari|meat|M|mollusc|
puff pastry||frozen|M|wheat,?|sheet 245
marzipan||baking|M|almond,egg?|
jam|fruit jam|dry|M|sulphite?|tbsp 20; cup 320
lupin flour||baking|M|lupin|cup 120
)";
}

}  // namespace suppertide::kitchen
