import { LOW_ACID_TABLE } from './published-low-acid-table'

/** The acid and acidified rows of the second transcription. */
const ACID_TABLE = `
# apple-butter--boiling-water | Apple butter | acid | 0.25 in. | sterile | - | AIB 539 1994: Guide 2, Apple butter, Table 1
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
hot quart: 0-1000=10 1001-6000=15 6001-=20
# apple-juice--boiling-water | Apple juice | acid | 0.25 in. | sterile | - | AIB 539 1994: Guide 2, Apple juice, Table 1
hot pint/quart: 0-1000=5 1001-6000=10 6001-=15
hot half-gallon: 0-1000=10 1001-6000=15 6001-=20
# apples-sliced--boiling-water | Apples, sliced | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, Apples - sliced, Table 1
hot pint/quart: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
# apples-sliced--dial | Apples, sliced | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, Apples - sliced, Table 2
hot pint/quart: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
# apples-sliced--weighted | Apples, sliced | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, Apples - sliced, Table 3
hot pint/quart: 0-1000=8@5 1001-=8@10
# applesauce--boiling-water | Applesauce | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, Applesauce, Table 1
hot pint: 0-1000=15 1001-3000=20 3001-6000=20 6001-=25
hot quart: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
# applesauce--dial | Applesauce | acid | 0.5 in. | - | - | UF FCS8276: Process times for some acid foods in a dial-gauge canner
hot pint: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
hot quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# applesauce--weighted | Applesauce | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, acid foods in a weighted-gauge canner: applesauce
hot pint: 0-1000=8@5 1001-=8@10
hot quart: 0-1000=10@5 1001-=10@10
# apricots--boiling-water | Apricots, halved or sliced | acid | 0.5 in. | - | - | MSU 1997: Apricots, Guide 2:9-10 (item 01600770)
hot pint: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
hot quart: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
raw pint: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
raw quart: 0-1000=30 1001-3000=35 3001-6000=40 6001-=45
# apricots--dial | Apricots, halved or sliced | acid | 0.5 in. | - | - | UF FCS8276: Peaches, apricots and nectarines
hot/raw pint/quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# apricots--weighted | Apricots, halved or sliced | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, Apricots, weighted-gauge table
hot/raw pint/quart: 0-1000=10@5 1001-=10@10
# peaches--boiling-water | Peaches, halved or sliced | acid | 0.5 in. | - | - | AIB 539 NCHFP: Guide 2, Peaches, Table 1
hot pint: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
hot quart: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
raw pint: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
raw quart: 0-1000=30 1001-3000=35 3001-6000=40 6001-=45
# peaches--dial | Peaches, halved or sliced | acid | 0.5 in. | - | - | UF FCS8276: Peaches, apricots and nectarines
hot/raw pint/quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# peaches--weighted | Peaches, halved or sliced | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, acid foods in a weighted-gauge canner: peaches
hot/raw pint/quart: 0-1000=10@5 1001-=10@10
# nectarines--boiling-water | Nectarines, halved or sliced | acid | 0.5 in. | - | - | Missouri (AIB 539): Nectarines, boiling-water table
hot pint: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
hot quart: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
raw pint: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
raw quart: 0-1000=30 1001-3000=35 3001-6000=40 6001-=45
# nectarines--dial | Nectarines, halved or sliced | acid | 0.5 in. | - | - | UF FCS8276: Peaches, apricots and nectarines
hot/raw pint/quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# berries-whole--boiling-water | Berries, whole (not strawberries) | acid | 0.5 in. | - | - | UF FCS8277: Table 1
hot pint/quart: 0-1000=15 1001-3000=20 3001-6000=20 6001-=25
raw pint: 0-1000=15 1001-3000=20 3001-6000=20 6001-=25
raw quart: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
# berries-whole--dial | Berries, whole (not strawberries) | acid | 0.5 in. | - | - | UF FCS8276: Berries, whole
hot pint/quart: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
raw pint: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
raw quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# berries-whole--weighted | Berries, whole (not strawberries) | acid | 0.5 in. | - | - | MSU 1997: Berries - whole (item 01600304)
hot pint/quart: 0-1000=8@5 1001-=8@10
raw pint: 0-1000=8@5 1001-=8@10
raw quart: 0-1000=10@5 1001-=10@10
# cherries--boiling-water | Cherries, whole, sweet or sour | acid | 0.5 in. | - | - | AIB 539 NCHFP: Guide 2, Cherries - whole, Table 1
hot pint: 0-1000=15 1001-3000=20 3001-6000=20 6001-=25
hot quart: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
raw pint/quart: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
# cherries--dial | Cherries, whole, sweet or sour | acid | 0.5 in. | - | - | UF FCS8276: Cherries, sour or sweet
hot pint: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
hot quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
raw pint/quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# cherries--weighted | Cherries, whole, sweet or sour | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, acid foods in a weighted-gauge canner: cherries
hot pint: 0-1000=8@5 1001-=8@10
hot quart: 0-1000=10@5 1001-=10@10
raw pint/quart: 0-1000=10@5 1001-=10@10
# figs--boiling-water | Figs | acidified | 0.5 in. | - | jar | MSU 1997: Figs (item 01600838)
hot pint: 0-1000=45 1001-3000=50 3001-6000=55 6001-=60
hot quart: 0-1000=50 1001-3000=55 3001-6000=60 6001-=65
# grape-juice--boiling-water | Grape juice | acid | 0.25 in. | sterile | - | MSU 1997: Grape juice (item 01600323)
hot pint/quart: 0-1000=5 1001-6000=10 6001-=15
hot half-gallon: 0-1000=10 1001-6000=15 6001-=20
# grapes-whole--boiling-water | Grapes, whole | acid | 1 in. | - | - | Nebraska: Table 1
hot pint/quart: 0-1000=10 1001-3000=15 3001-6000=15 6001-=20
raw pint: 0-1000=15 1001-3000=20 3001-6000=20 6001-=25
raw quart: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
# pears--boiling-water | Pears, halved | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, Pears - halved, Table 1
hot pint: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
hot quart: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
# pears--dial | Pears, halved | acid | 0.5 in. | - | - | UF FCS8276: Pears
hot pint/quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# pears--weighted | Pears, halved | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, Pears - halved, Table 3
hot pint/quart: 0-1000=10@5 1001-=10@10
# plums--boiling-water | Plums, halved or whole | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, Plums, Table 1
hot/raw pint: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
hot/raw quart: 0-1000=25 1001-3000=30 3001-6000=35 6001-=40
# plums--dial | Plums, halved or whole | acid | 0.5 in. | - | - | UF FCS8276: Plums
hot/raw pint/quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# plums--weighted | Plums, halved or whole | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, acid foods in a weighted-gauge canner: plums
hot/raw pint/quart: 0-1000=10@5 1001-=10@10
# fruit-puree--boiling-water | Fruit purees (not figs or tomatoes) | acid | 0.25 in. | - | - | MSU 1997: Fruit purees (item 01600839)
hot pint/quart: 0-1000=15 1001-6000=20 6001-=25
# fruit-puree--dial | Fruit purees (not figs or tomatoes) | acid | 0.25 in. | - | - | MSU 1997: Fruit purees (item 01600839)
hot pint/quart: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
# fruit-puree--weighted | Fruit purees (not figs or tomatoes) | acid | 0.25 in. | - | - | MSU 1997: Fruit purees (item 01600839)
hot pint/quart: 0-1000=8@5 1001-=8@10
# nectarines--weighted | Nectarines, halved or sliced | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, acid foods in a weighted-gauge canner: peaches, apricots and nectarines
hot/raw pint/quart: 0-1000=10@5 1001-=10@10
# citrus-sections--weighted | Grapefruit and orange sections | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, acid foods in a weighted-gauge canner: grapefruit and orange sections
hot pint/quart: 0-1000=8@5 1001-=8@10
raw pint: 0-1000=8@5 1001-=8@10
raw quart: 0-1000=10@5 1001-=10@10
# rhubarb--dial | Rhubarb, stewed | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, acid foods in a dial-gauge canner: rhubarb
hot pint/quart: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
# rhubarb--weighted | Rhubarb, stewed | acid | 0.5 in. | - | - | AIB 539 1994: Guide 2, acid foods in a weighted-gauge canner: rhubarb
hot pint/quart: 0-1000=8@5 1001-=8@10
# citrus-sections--dial | Grapefruit and orange sections | acid | 0.5 in. | - | - | UF FCS8276: Grapefruit and orange sections
hot pint/quart: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
raw pint: 0-2000=8@6 2001-4000=8@7 4001-6000=8@8 6001-8000=8@9
raw quart: 0-2000=10@6 2001-4000=10@7 4001-6000=10@8 6001-8000=10@9
# cranberry-orange-chutney--boiling-water | Cranberry orange chutney | acid | 0.5 in. | - | recipe | AIB 539 NCHFP: Guide 2, Cranberry orange chutney, Table 1
hot half-pint: 0-1000=10 1001-6000=15 6001-=20
# jam-no-added-pectin--boiling-water | Jam without added pectin (apricot, berry, strawberry, peach) | acid | 0.25 in. | sterile | - | So Easy 5: Berry jam without added pectin, process table
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
# jelly-no-added-pectin--boiling-water | Jelly without added pectin | acid | 0.25 in. | sterile | - | Missouri (NCHFP): Apple jelly without added pectin, process table
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
# jam-jelly-added-pectin--boiling-water | Jams and jellies with added packaged pectin | acid | 0.25 in. | sterile | - | So Easy 6: Jam with powdered pectin, process table
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
# pear-apple-jam--boiling-water | Pear-apple jam | acid | 0.25 in. | sterile | recipe | AIB 539 later: Guide 7, Pear-apple jam
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
# blueberry-spice-jam--boiling-water | Blueberry-spice jam | acid | 0.25 in. | sterile | - | AIB 539 later: Guide 7, Blueberry-spice jam
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
# grape-plum-jelly--boiling-water | Grape-plum jelly | acid | 0.25 in. | sterile | - | AIB 539 later: Guide 7, Grape-plum jelly
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
# plum-preserves--boiling-water | Plum preserves (tart plums, no added pectin) | acid | 0.25 in. | sterile | - | State extension, plum preserves: Process table
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
# peach-pineapple-spread--boiling-water | Peach-pineapple reduced-sugar spread | acid | 0.25 in. | - | recipe | Utah State Guide 7: Fruit-pineapple spread
hot half-pint: 0-1000=15 1001-3000=20 3001-6000=20 6001-=25
hot pint: 0-1000=20 1001-3000=25 3001-6000=30 6001-=35
# tomatoes-crushed--boiling-water | Tomatoes, crushed, no added liquid | acidified | 0.5 in. | - | jar+vinegar | AIB 539 reworded: Crushed tomatoes, boiling-water table
hot pint: 0-1000=35 1001-3000=40 3001-6000=45 6001-=50
hot quart: 0-1000=45 1001-3000=50 3001-6000=55 6001-=60
# tomatoes-crushed--dial | Tomatoes, crushed, no added liquid | acidified | 0.5 in. | - | jar+vinegar | AIB 539 1994: Guide 3, Tomatoes - crushed, dial table
hot pint/quart option 1: 0-2000=20@6 2001-4000=20@7 4001-6000=20@8 6001-8000=20@9
hot pint/quart option 2: 0-2000=15@11 2001-4000=15@12 4001-6000=15@13 6001-8000=15@14
# tomato-juice--boiling-water | Tomato juice | acidified | 0.5 in. | - | jar+vinegar | AIB 539 later: Guide 3, Tomato juice
hot pint: 0-1000=35 1001-3000=40 3001-6000=45 6001-=50
hot quart: 0-1000=40 1001-3000=45 3001-6000=50 6001-=55
# tomato-juice--dial | Tomato juice | acidified | 0.5 in. | - | jar+vinegar | AIB 539 later: Guide 3, Tomato juice
hot pint/quart option 1: 0-2000=20@6 2001-4000=20@7 4001-6000=20@8 6001-8000=20@9
hot pint/quart option 2: 0-2000=15@11 2001-4000=15@12 4001-6000=15@13 6001-8000=15@14
# tomato-vegetable-juice--boiling-water | Tomato and vegetable juice blend | acidified | 0.5 in. | - | jar+vinegar | MSU 1997: Tomato and vegetable juice blend, Guide 3:6 (item 01600833)
hot pint: 0-1000=35 1001-3000=40 3001-6000=45 6001-=50
hot quart: 0-1000=40 1001-3000=45 3001-6000=50 6001-=55
# tomato-vegetable-juice--dial | Tomato and vegetable juice blend | acidified | 0.5 in. | - | jar+vinegar | MSU 1997: Tomato and vegetable juice blend, Guide 3:6 (item 01600833)
hot pint/quart option 1: 0-2000=20@6 2001-4000=20@7 4001-6000=20@8 6001-8000=20@9
hot pint/quart option 2: 0-2000=15@11 2001-4000=15@12 4001-6000=15@13 6001-8000=15@14
# tomato-vegetable-juice--weighted | Tomato and vegetable juice blend | acidified | 0.5 in. | - | jar+vinegar | MSU 1997: Tomato and vegetable juice blend, Guide 3:6 (item 01600833)
hot pint/quart option 1: 0-1000=20@5 1001-=20@10
hot pint/quart option 2: 0-1000=15@10 1001-=15@15
hot pint/quart option 3: 0-1000=10@15 1001-=no
# tomato-sauce--boiling-water | Tomato sauce, standard (thin or thick) | acidified | 0.25 in. | - | jar+vinegar | AIB 539 1994: Guide 3, Standard tomato sauce, Table 1
hot pint: 0-1000=35 1001-3000=40 3001-6000=45 6001-=50
hot quart: 0-1000=40 1001-3000=45 3001-6000=50 6001-=55
# tomato-sauce--dial | Tomato sauce, standard (thin or thick) | acidified | 0.25 in. | - | jar+vinegar | AIB 539 later: Guide 3, Standard tomato sauce, dial table
hot pint/quart option 1: 0-2000=20@6 2001-4000=20@7 4001-6000=20@8 6001-8000=20@9
hot pint/quart option 2: 0-2000=15@11 2001-4000=15@12 4001-6000=15@13 6001-8000=15@14
# tomato-sauce--weighted | Tomato sauce, standard (thin or thick) | acidified | 0.25 in. | - | jar+vinegar | NCHFP 2015: Standard tomato sauce, Table 3
hot pint/quart option 1: 0-1000=20@5 1001-=20@10
hot pint/quart option 2: 0-1000=15@10 1001-=15@15
hot pint/quart option 3: 0-1000=10@15 1001-=no
# tomatoes-whole-water--boiling-water | Tomatoes, whole or halved, packed in water | acidified | 0.5 in. | - | jar+vinegar | AIB 539 later: Guide 3, whole or halved in water
hot/raw pint: 0-1000=40 1001-3000=45 3001-6000=50 6001-=55
hot/raw quart: 0-1000=45 1001-3000=50 3001-6000=55 6001-=60
# tomatoes-whole-water--dial | Tomatoes, whole or halved, packed in water | acidified | 0.5 in. | - | jar+vinegar | AIB 539 later: Guide 3, whole or halved in water, dial table
hot/raw pint/quart option 1: 0-2000=15@6 2001-4000=15@7 4001-6000=15@8 6001-8000=15@9
hot/raw pint/quart option 2: 0-2000=10@11 2001-4000=10@12 4001-6000=10@13 6001-8000=10@14
# tomatoes-whole-water--weighted | Tomatoes, whole or halved, packed in water | acidified | 0.5 in. | - | jar+vinegar | AIB 539 later: Guide 3, whole or halved in water, weighted table
hot/raw pint/quart option 1: 0-1000=15@5 1001-=15@10
hot/raw pint/quart option 2: 0-1000=10@10 1001-=10@15
hot/raw pint/quart option 3: 0-1000=1@15 1001-=no
# tomatoes-whole-juice--boiling-water | Tomatoes, whole or halved, packed in tomato juice | acidified | 0.5 in. | - | jar+vinegar | MSU 1997: Tomatoes whole or halved in tomato juice, Guide 3:10-11 (item 01600828)
hot/raw pint/quart: 0-1000=85 1001-3000=90 3001-6000=95 6001-=100
# tomatoes-whole-juice--dial | Tomatoes, whole or halved, packed in tomato juice | acidified | 0.5 in. | - | jar+vinegar | MSU 1997: Tomatoes whole or halved in tomato juice, Guide 3:10-11 (item 01600828)
hot/raw pint/quart option 1: 0-2000=40@6 2001-4000=40@7 4001-6000=40@8 6001-8000=40@9
hot/raw pint/quart option 2: 0-2000=25@11 2001-4000=25@12 4001-6000=25@13 6001-8000=25@14
# tomatoes-whole-juice--weighted | Tomatoes, whole or halved, packed in tomato juice | acidified | 0.5 in. | - | jar+vinegar | MSU 1997: Tomatoes whole or halved in tomato juice, Guide 3:10-11 (item 01600828)
hot/raw pint/quart option 1: 0-1000=40@5 1001-=40@10
hot/raw pint/quart option 2: 0-1000=25@10 1001-=25@15
hot/raw pint/quart option 3: 0-1000=15@15 1001-=no
# tomatoes-raw-no-liquid--boiling-water | Tomatoes, whole or halved, raw, no added liquid | acidified | 0.5 in. | - | jar+vinegar | MSU 1997: Tomatoes whole or halved, raw, no added liquid (item 01600875)
raw pint/quart: 0-1000=85 1001-3000=90 3001-6000=95 6001-8000=100
# tomatoes-raw-no-liquid--dial | Tomatoes, whole or halved, raw, no added liquid | acidified | 0.5 in. | - | jar+vinegar | MSU 1997: Tomatoes whole or halved, raw, no added liquid (item 01600875)
raw pint/quart option 1: 0-2000=40@6 2001-4000=40@7 4001-6000=40@8 6001-8000=40@9
raw pint/quart option 2: 0-2000=25@11 2001-4000=25@12 4001-6000=25@13 6001-8000=25@14
# tomatoes-raw-no-liquid--weighted | Tomatoes, whole or halved, raw, no added liquid | acidified | 0.5 in. | - | jar+vinegar | AIB 539 later: Whole or halved tomatoes, raw, no added liquid, weighted table (National Center table)
raw pint/quart option 1: 0-1000=40@5 1001-=40@10
raw pint/quart option 2: 0-1000=25@10 1001-=25@15
raw pint/quart option 3: 0-1000=15@15 1001-=no
# tomato-ketchup--boiling-water | Tomato ketchup | acidified | 0.125 in. | - | recipe | MSU 1997: Tomato ketchup, Guide 3:16 (item 01600827)
hot pint: 0-1000=15 1001-6000=20 6001-=25
# tomato-ketchup--atmospheric-steam | Tomato ketchup | acidified | 0.125 in. | - | recipe | UC Central Sierra 2017: Step 7 (boiling water or atmospheric steam)
hot pint: 0-1000=15 1001-6000=20 6001-=25
# chile-salsa--boiling-water | Chile salsa (hot tomato-pepper sauce), tested recipe | acidified | 0.5 in. | - | recipe | MSU 1997: Chile salsa (item 01600882)
hot pint: 0-1000=15 1001-6000=20 6001-8000=25
# tomato-paste-salsa--boiling-water | Tomato and tomato-paste salsa, tested recipe | acidified | 0.5 in. | - | recipe | NCHFP reproduced: Tomato/Tomato Paste Salsa, Table 1
hot pint: 0-1000=15 1001-6000=20 6001-=25
# dill-pickles-fresh-pack--boiling-water | Quick fresh-pack dill pickles | acidified | 0.5 in. | - | recipe | MSU 1997: Quick fresh-pack dill pickles, Guide 6:20 (item 01600865)
raw pint: 0-1000=10 1001-6000=15 6001-=20
raw quart: 0-1000=15 1001-6000=20 6001-=25
# bread-and-butter-pickles--boiling-water | Bread-and-butter pickles | acidified | 0.5 in. | - | recipe | MSU 1997: Bread and butter pickles, Guide 6:19 (item 01600131)
hot pint/quart: 0-1000=10 1001-6000=15 6001-=20
# pickled-beets--boiling-water | Pickled beets | acidified | 0.5 in. | - | recipe | MSU 1997: Pickled beets, Guide 6:11 (item 01600047)
hot pint/quart: 0-1000=30 1001-3000=35 3001-6000=40 6001-=45
# pickle-relish--boiling-water | Pickle relish | acidified | 0.5 in. | - | recipe | MSU 1997: Pickle relish (item 01600138)
hot half-pint/pint: 0-1000=10 1001-6000=15 6001-8000=20
# corn-relish--boiling-water | Pickled corn relish | acidified | 0.5 in. | - | recipe | MSU 1997: Pickled corn relish (item 01600282)
hot half-pint/pint: 0-1000=15 1001-6000=20 6001-8000=25
# green-tomato-relish--boiling-water | Pickled green tomato relish | acidified | 0.5 in. | sterile | recipe | MSU 1997: Pickled green tomato relish (item 01600869)
hot pint: 0-1000=5 1001-6000=10 6001-8000=15
# piccalilli--boiling-water | Piccalilli | acidified | 0.5 in. | sterile | recipe | AIB 539 1994: Guide 6, Piccalilli, Table 1
hot half-pint/pint: 0-1000=5 1001-6000=10 6001-=15
`

/**
 * The published rows a second time, in another form, to compare the tables of the app with.
 *
 * A row: `# id | food | acidity | headspace | sterile jars under 10 min | acid | publication: table`.
 * A line under it: `packs jars [option n]: feet-feet=minutes` for boiling water and steam, `feet-feet=minutes@psi` for pressure,
 * `=no` where "not recommended" is printed; nothing after the dash means no upper end.
 */
export const PUBLISHED_TABLE = `${ACID_TABLE.trim()}\n${LOW_ACID_TABLE.trim()}`

/** Rows that were not read in their publication: id and acidity. They must never give a time. */
export const UNREAD_TABLE = `
orange-marmalade--boiling-water | acid
tomatoes-crushed--weighted | acidified
tomato-juice--weighted | acidified
sauerkraut--boiling-water | acid
dilled-beans--boiling-water | acidified
`

/**
 * Where another publication prints a longer time for the same food, pack, jar and band than the table above, in its form. The longer one
 * is the one to use: Iowa State University Extension, AnswerLine (2013), and the first dial line of AIB 539 in its 1994 text.
 */
export const LONGER_TABLE = `
# applesauce--boiling-water | Applesauce | acid | 0.5 in. | - | - | Iowa State 2013: Try something new: can some applesauce
hot quart: 0-1000=25 1001-3000=30
# tomatoes-whole-water--dial | Tomatoes, whole or halved, packed in water | acidified | 0.5 in. | - | jar+vinegar | AIB 539 1994: Guide 3, whole or halved in water, dial table, first line
hot/raw pint/quart option 1: 0-2000=20@6 2001-4000=20@7 4001-6000=20@8 6001-8000=20@9
`

/**
 * Utah State University Extension, Timetables for Canning at Altitudes of 3,000 to 10,000 Feet (2010): minutes in boiling water from
 * 8,001 to 10,000 ft, where AIB 539 holds its open band. Packs, pints, quarts.
 */
export const UTAH_TABLE = `
apples-sliced hot 40 40
applesauce hot 30 40
apricots hot 40 45
apricots raw 45 50
peaches hot 40 45
peaches raw 45 50
berries-whole hot 30 40
berries-whole raw 30 40
cherries hot 30 40
cherries raw 45 45
pears hot 40 45
plums hot 40 45
plums raw 40 45
fruit-puree hot 30 30
apple-juice hot 20 20
grape-juice hot 20 20
`

/** Foods whose open boiling-water band another publication closes or contradicts above 8,000 ft, without a longer time for every jar. */
export const CLOSED_AT_8000 = [
  'apple-butter',
  'apple-juice',
  'grape-juice',
  'figs',
  'grapes-whole',
  'nectarines',
  'cranberry-orange-chutney',
  'tomatoes-whole-water',
]
