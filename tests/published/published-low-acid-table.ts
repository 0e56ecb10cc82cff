/** The low-acid rows of the second transcription; see published-table.ts for the form. */
export const LOW_ACID_TABLE = `
# spaghetti-sauce-meatless--dial | Spaghetti sauce without meat, tested recipe | low-acid | 1 in. | - | - | NCHFP 2015: Tables 1 and 2
hot pint: 0-2000=20@11 2001-4000=20@12 4001-6000=20@13 6001-8000=20@14
hot quart: 0-2000=25@11 2001-4000=25@12 4001-6000=25@13 6001-8000=25@14
# spaghetti-sauce-meatless--weighted | Spaghetti sauce without meat, tested recipe | low-acid | 1 in. | - | - | NCHFP 2015: Tables 1 and 2
hot pint: 0-1000=20@10 1001-=20@15
hot quart: 0-1000=25@10 1001-=25@15
# mexican-tomato-sauce--dial | Mexican tomato sauce, tested recipe | low-acid | 1 in. | - | - | MSU 1997: Mexican tomato sauce (item 01600879)
hot pint: 0-2000=20@11 2001-4000=20@12 4001-6000=20@13 6001-8000=20@14
hot quart: 0-2000=25@11 2001-4000=25@12 4001-6000=25@13 6001-8000=25@14
# mexican-tomato-sauce--weighted | Mexican tomato sauce, tested recipe | low-acid | 1 in. | - | - | MSU 1997: Mexican tomato sauce (item 01600879)
hot pint: 0-1000=20@10 1001-=20@15
hot quart: 0-1000=25@10 1001-=25@15
# spaghetti-sauce-meat--dial | Spaghetti sauce with meat, tested recipe | low-acid | 1 in. | - | - | Missouri (AIB 539): Spaghetti sauce with meat, dial table
hot pint: 0-2000=60@11 2001-4000=60@12 4001-6000=60@13 6001-8000=60@14
hot quart: 0-2000=70@11 2001-4000=70@12 4001-6000=70@13 6001-8000=70@14
# spaghetti-sauce-meat--weighted | Spaghetti sauce with meat, tested recipe | low-acid | 1 in. | - | - | Missouri (AIB 539): Spaghetti sauce with meat, weighted table
hot pint: 0-1000=60@10 1001-=60@15
hot quart: 0-1000=70@10 1001-=70@15
# asparagus--dial | Asparagus, spears or pieces | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Asparagus, Tables 1-2
hot/raw pint: 0-2000=30@11 2001-4000=30@12 4001-6000=30@13 6001-8000=30@14
hot/raw quart: 0-2000=40@11 2001-4000=40@12 4001-6000=40@13 6001-8000=40@14
# asparagus--weighted | Asparagus, spears or pieces | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Asparagus, Tables 1-2
hot/raw pint: 0-1000=30@10 1001-=30@15
hot/raw quart: 0-1000=40@10 1001-=40@15
# green-beans--dial | Beans, snap and Italian, pieces | low-acid | 1 in. | - | - | MSU 1997: Beans, snap and Italian, Guide 4:9 (item 01600883)
hot/raw pint: 0-2000=20@11 2001-4000=20@12 4001-6000=20@13 6001-8000=20@14
hot/raw quart: 0-2000=25@11 2001-4000=25@12 4001-6000=25@13 6001-8000=25@14
# green-beans--weighted | Beans, snap and Italian, pieces | low-acid | 1 in. | - | - | MSU 1997: Beans, snap and Italian, Guide 4:9 (item 01600883)
hot/raw pint: 0-1000=20@10 1001-=20@15
hot/raw quart: 0-1000=25@10 1001-=25@15
# lima-beans--dial | Lima beans, fresh, shelled | low-acid | 1 (raw quart 1.5) in. | - | - | AIB 539 1994: Guide 4, Fresh lima beans, Tables 1-2
hot/raw pint: 0-2000=40@11 2001-4000=40@12 4001-6000=40@13 6001-8000=40@14
hot/raw quart: 0-2000=50@11 2001-4000=50@12 4001-6000=50@13 6001-8000=50@14
# lima-beans--weighted | Lima beans, fresh, shelled | low-acid | 1 (raw quart 1.5) in. | - | - | AIB 539 1994: Guide 4, Fresh lima beans, Tables 1-2
hot/raw pint: 0-1000=40@10 1001-=40@15
hot/raw quart: 0-1000=50@10 1001-=50@15
# beets--dial | Beets, whole, cubed or sliced | low-acid | 1 in. | - | - | MSU 1997: Beets, Guide 4:9-10 (item 01600045)
hot pint: 0-2000=30@11 2001-4000=30@12 4001-6000=30@13 6001-8000=30@14
hot quart: 0-2000=35@11 2001-4000=35@12 4001-6000=35@13 6001-8000=35@14
# beets--weighted | Beets, whole, cubed or sliced | low-acid | 1 in. | - | - | MSU 1997: Beets, Guide 4:9-10 (item 01600045)
hot pint: 0-1000=30@10 1001-=30@15
hot quart: 0-1000=35@10 1001-=35@15
# carrots--dial | Carrots, sliced or diced | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Carrots, Tables 1-2
hot/raw pint: 0-2000=25@11 2001-4000=25@12 4001-6000=25@13 6001-8000=25@14
hot/raw quart: 0-2000=30@11 2001-4000=30@12 4001-6000=30@13 6001-8000=30@14
# carrots--weighted | Carrots, sliced or diced | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Carrots, Tables 1-2
hot/raw pint: 0-1000=25@10 1001-=25@15
hot/raw quart: 0-1000=30@10 1001-=30@15
# corn-whole-kernel--dial | Corn, whole kernel | low-acid | 1 in. | - | - | MSU 1997: Corn - whole kernel, Guide 4:12 (item 01600280)
hot/raw pint: 0-2000=55@11 2001-4000=55@12 4001-6000=55@13 6001-8000=55@14
hot/raw quart: 0-2000=85@11 2001-4000=85@12 4001-6000=85@13 6001-8000=85@14
# corn-whole-kernel--weighted | Corn, whole kernel | low-acid | 1 in. | - | - | MSU 1997: Corn - whole kernel, Guide 4:12 (item 01600280)
hot/raw pint: 0-1000=55@10 1001-=55@15
hot/raw quart: 0-1000=85@10 1001-=85@15
# peas-green--dial | Peas, green or English, shelled | low-acid | 1 in. | - | - | MSU 1997: Peas, green or English (item 01600242)
hot/raw pint/quart: 0-2000=40@11 2001-4000=40@12 4001-6000=40@13 6001-8000=40@14
# peas-green--weighted | Peas, green or English, shelled | low-acid | 1 in. | - | - | MSU 1997: Peas, green or English (item 01600242)
hot/raw pint/quart: 0-1000=40@10 1001-=40@15
# peppers--dial | Peppers, hot or sweet | low-acid | 1 in. | - | - | MSU 1997: Peppers (item 01600704)
hot half-pint/pint: 0-2000=35@11 2001-4000=35@12 4001-6000=35@13 6001-8000=35@14
# peppers--weighted | Peppers, hot or sweet | low-acid | 1 in. | - | - | MSU 1997: Peppers (item 01600704)
hot half-pint/pint: 0-1000=35@10 1001-=35@15
# potatoes-white--dial | Potatoes, white, cubed or whole | low-acid | 1 in. | - | - | MSU 1997: Potatoes, white (item 01600267)
hot pint: 0-2000=35@11 2001-4000=35@12 4001-6000=35@13 6001-8000=35@14
hot quart: 0-2000=40@11 2001-4000=40@12 4001-6000=40@13 6001-8000=40@14
# potatoes-white--weighted | Potatoes, white, cubed or whole | low-acid | 1 in. | - | - | MSU 1997: Potatoes, white (item 01600267)
hot pint: 0-1000=35@10 1001-=35@15
hot quart: 0-1000=40@10 1001-=40@15
# pumpkin-winter-squash--dial | Pumpkin and winter squash, cubed only | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Pumpkins and winter squash, Tables 1-2
hot pint: 0-2000=55@11 2001-4000=55@12 4001-6000=55@13 6001-8000=55@14
hot quart: 0-2000=90@11 2001-4000=90@12 4001-6000=90@13 6001-8000=90@14
# pumpkin-winter-squash--weighted | Pumpkin and winter squash, cubed only | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Pumpkins and winter squash, Tables 1-2
hot pint: 0-1000=55@10 1001-=55@15
hot quart: 0-1000=90@10 1001-=90@15
# dry-beans-peas--dial | Beans or peas, shelled, dried, rehydrated | low-acid | 1 in. | - | - | MSU 1997: Beans or peas - shelled, dried (item 01600235)
hot pint: 0-2000=75@11 2001-4000=75@12 4001-6000=75@13 6001-8000=75@14
hot quart: 0-2000=90@11 2001-4000=90@12 4001-6000=90@13 6001-8000=90@14
# dry-beans-peas--weighted | Beans or peas, shelled, dried, rehydrated | low-acid | 1 in. | - | - | MSU 1997: Beans or peas - shelled, dried (item 01600235)
hot pint: 0-1000=75@10 1001-=75@15
hot quart: 0-1000=90@10 1001-=90@15
# mixed-vegetables--dial | Mixed vegetables | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Mixed vegetables, Tables 1-2
hot pint: 0-2000=75@11 2001-4000=75@12 4001-6000=75@13 6001-8000=75@14
hot quart: 0-2000=90@11 2001-4000=90@12 4001-6000=90@13 6001-8000=90@14
# mixed-vegetables--weighted | Mixed vegetables | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Mixed vegetables, Tables 1-2
hot pint: 0-1000=75@10 1001-=75@15
hot quart: 0-1000=90@10 1001-=90@15
# corn-cream-style--dial | Corn, cream style | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Corn - cream style, Tables 1-2
hot pint: 0-2000=85@11 2001-4000=85@12 4001-6000=85@13 6001-8000=85@14
# corn-cream-style--weighted | Corn, cream style | low-acid | 1 in. | - | - | AIB 539 1994: Guide 4, Corn - cream style, Tables 1-2
hot pint: 0-1000=85@10 1001-=85@15
# sweet-potatoes--dial | Sweet potatoes, pieces or whole | low-acid | 1 in. | - | - | MSU 1997: Potatoes, sweet (item 01600190)
hot pint: 0-2000=65@11 2001-4000=65@12 4001-6000=65@13 6001-8000=65@14
hot quart: 0-2000=90@11 2001-4000=90@12 4001-6000=90@13 6001-8000=90@14
# sweet-potatoes--weighted | Sweet potatoes, pieces or whole | low-acid | 1 in. | - | - | MSU 1997: Potatoes, sweet (item 01600190)
hot pint: 0-1000=65@10 1001-=65@15
hot quart: 0-1000=90@10 1001-=90@15
# greens--dial | Spinach and other greens | low-acid | 1 in. | - | - | MSU 1997: Spinach and other greens (item 01600053)
hot pint: 0-2000=70@11 2001-4000=70@12 4001-6000=70@13 6001-8000=70@14
hot quart: 0-2000=90@11 2001-4000=90@12 4001-6000=90@13 6001-8000=90@14
# greens--weighted | Spinach and other greens | low-acid | 1 in. | - | - | MSU 1997: Spinach and other greens (item 01600053)
hot pint: 0-1000=70@10 1001-=70@15
hot quart: 0-1000=90@10 1001-=90@15
# okra--dial | Okra | low-acid | 1 in. | - | - | Missouri (AIB 539): Okra, dial table
hot pint: 0-2000=25@11 2001-4000=25@12 4001-6000=25@13 6001-8000=25@14
hot quart: 0-2000=40@11 2001-4000=40@12 4001-6000=40@13 6001-8000=40@14
# okra--weighted | Okra | low-acid | 1 in. | - | - | Missouri (AIB 539): Okra, weighted table
hot pint: 0-1000=25@10 1001-=25@15
hot quart: 0-1000=40@10 1001-=40@15
# mushrooms--dial | Mushrooms, whole or sliced (cultivated only) | low-acid | 1 in. | - | - | MSU 1997: Mushrooms (item 01600287)
hot half-pint/pint: 0-2000=45@11 2001-4000=45@12 4001-6000=45@13 6001-8000=45@14
# mushrooms--weighted | Mushrooms, whole or sliced (cultivated only) | low-acid | 1 in. | - | - | MSU 1997: Mushrooms (item 01600287)
hot half-pint/pint: 0-1000=45@10 1001-=45@15
# soups--dial | Soups (vegetable, dried bean or pea, meat, poultry) | low-acid | 1 in. | - | - | MSU 1997: Soups (item 01600886)
hot pint: 0-2000=60@11 2001-4000=60@12 4001-6000=60@13 6001-8000=60@14
hot quart: 0-2000=75@11 2001-4000=75@12 4001-6000=75@13 6001-8000=75@14
# soups--weighted | Soups (vegetable, dried bean or pea, meat, poultry) | low-acid | 1 in. | - | - | MSU 1997: Soups (item 01600886)
hot pint: 0-1000=60@10 1001-=60@15
hot quart: 0-1000=75@10 1001-=75@15
# soups-seafood--dial | Soups containing seafood | low-acid | 1 in. | - | - | MSU 1997: Soups, seafood caution (item 01600886)
hot pint/quart: 0-2000=100@11 2001-4000=100@12 4001-6000=100@13 6001-8000=100@14
# soups-seafood--weighted | Soups containing seafood | low-acid | 1 in. | - | - | MSU 1997: Soups, seafood caution (item 01600886)
hot pint/quart: 0-1000=100@10 1001-=100@15
# chicken-rabbit-boneless--dial | Chicken or rabbit, without bones | low-acid | 1.25 in. | - | - | MSU 1997: Chicken or rabbit (item 01600482)
hot/raw pint: 0-2000=75@11 2001-4000=75@12 4001-6000=75@13 6001-8000=75@14
hot/raw quart: 0-2000=90@11 2001-4000=90@12 4001-6000=90@13 6001-8000=90@14
# chicken-rabbit-boneless--weighted | Chicken or rabbit, without bones | low-acid | 1.25 in. | - | - | MSU 1997: Chicken or rabbit (item 01600482)
hot/raw pint: 0-1000=75@10 1001-=75@15
hot/raw quart: 0-1000=90@10 1001-=90@15
# chicken-rabbit-bone-in--dial | Chicken or rabbit, with bones | low-acid | 1.25 in. | - | - | MSU 1997: Chicken or rabbit (item 01600482)
hot/raw pint: 0-2000=65@11 2001-4000=65@12 4001-6000=65@13 6001-8000=65@14
hot/raw quart: 0-2000=75@11 2001-4000=75@12 4001-6000=75@13 6001-8000=75@14
# chicken-rabbit-bone-in--weighted | Chicken or rabbit, with bones | low-acid | 1.25 in. | - | - | MSU 1997: Chicken or rabbit (item 01600482)
hot/raw pint: 0-1000=65@10 1001-=65@15
hot/raw quart: 0-1000=75@10 1001-=75@15
# meat-ground--dial | Ground or chopped meat | low-acid | 1 in. | - | - | AIB 539 1994: Guide 5, Ground or chopped meat, Tables 1-2
hot pint: 0-2000=75@11 2001-4000=75@12 4001-6000=75@13 6001-8000=75@14
hot quart: 0-2000=90@11 2001-4000=90@12 4001-6000=90@13 6001-8000=90@14
# meat-ground--weighted | Ground or chopped meat | low-acid | 1 in. | - | - | AIB 539 1994: Guide 5, Ground or chopped meat, Tables 1-2
hot pint: 0-1000=75@10 1001-=75@15
hot quart: 0-1000=90@10 1001-=90@15
# meat-strips-cubes--dial | Strips, cubes or chunks of meat | low-acid | 1 in. | - | - | MSU 1997: Strips, cubes or chunks, Guide 5:6-7 (item 01600849)
hot/raw pint: 0-2000=75@11 2001-4000=75@12 4001-6000=75@13 6001-8000=75@14
hot/raw quart: 0-2000=90@11 2001-4000=90@12 4001-6000=90@13 6001-8000=90@14
# meat-strips-cubes--weighted | Strips, cubes or chunks of meat | low-acid | 1 in. | - | - | MSU 1997: Strips, cubes or chunks, Guide 5:6-7 (item 01600849)
hot/raw pint: 0-1000=75@10 1001-=75@15
hot/raw quart: 0-1000=90@10 1001-=90@15
# meat-stock--dial | Meat or poultry stock (broth) | low-acid | 1 in. | - | - | MSU 1997: Beef, chicken or turkey stock (item 01600478)
hot pint: 0-2000=20@11 2001-4000=20@12 4001-6000=20@13 6001-8000=20@14
hot quart: 0-2000=25@11 2001-4000=25@12 4001-6000=25@13 6001-8000=25@14
# meat-stock--weighted | Meat or poultry stock (broth) | low-acid | 1 in. | - | - | MSU 1997: Beef, chicken or turkey stock (item 01600478)
hot pint: 0-1000=20@10 1001-=20@15
hot quart: 0-1000=25@10 1001-=25@15
# fish-pints--dial | Fish (salmon, trout, mackerel and other fatty fish except tuna), pint jars | low-acid | 1 in. | - | - | AIB 539 1994: Guide 5, Fish, Tables 1-2
raw pint: 0-2000=100@11 2001-4000=100@12 4001-6000=100@13 6001-8000=100@14
# fish-pints--weighted | Fish (salmon, trout, mackerel and other fatty fish except tuna), pint jars | low-acid | 1 in. | - | - | AIB 539 1994: Guide 5, Fish, Tables 1-2
raw pint: 0-1000=100@10 1001-=100@15
# chile-con-carne--dial | Chile con carne, tested recipe | low-acid | 1 in. | - | - | AIB 539 1994: Guide 5, Chile con carne
hot pint: 0-2000=75@11 2001-4000=75@12 4001-6000=75@13 6001-8000=75@14
# chile-con-carne--weighted | Chile con carne, tested recipe | low-acid | 1 in. | - | - | AIB 539 1994: Guide 5, Chile con carne
hot pint: 0-1000=75@10 1001-=75@15
# tuna--dial | Tuna, precooked or raw | low-acid | 1 in. | - | - | MSU 1997: Tuna, Guide 5:12 (item 01600854)
hot/raw half-pint/pint: 0-2000=100@11 2001-4000=100@12 4001-6000=100@13 6001-8000=100@14
# tuna--weighted | Tuna, precooked or raw | low-acid | 1 in. | - | - | Oregon State 2024: Tuna, half-pints, weighted gauge
hot/raw half-pint/pint: 0-1000=100@10 1001-=100@15
`
