/**
 * What a level US cup of a food weighs, and how much of it is eaten: USDA National Nutrient
 * Database for Standard Reference, Release 28 (WEIGHT.txt and FOOD_DES.txt), by NDB number.
 * Public domain. It is one laboratory's cup: the same database has 113 g and 86 g of shredded
 * mozzarella, so ten scoops of one's own say more.
 */
export interface FoodWeight {
  readonly id: string
  readonly ndb: string
  readonly gPerCup: number
}

const food = (id: string, ndb: string, gPerCup: number): FoodWeight => ({ id, ndb, gPerCup })

export const FOOD_WEIGHTS: readonly FoodWeight[] = [
  food('egg-raw', '01123', 243),
  food('egg-scrambled', '01132', 220),
  food('egg-hard-boiled-chopped', '01129', 136),
  food('cheddar-shredded', '01009', 113),
  food('cheddar-diced', '01009', 132),
  food('swiss-shredded', '01040', 108),
  food('mozzarella-shredded', '01029', 113),
  food('chicken-diced', '05064', 140),
  food('mayonnaise', '04025', 220),
  food('rice-white-cooked', '20045', 158),
  food('rice-brown-cooked', '20037', 202),
  food('black-beans-boiled', '16015', 172),
  food('refried-beans', '16103', 238),
  food('salsa', '06164', 259),
  food('sour-cream', '01056', 230),
  food('ketchup', '11935', 240),
  food('mustard', '02046', 249),
  food('butter', '01001', 227),
  food('canola-oil', '04582', 218),
  food('olive-oil', '04053', 216),
  food('milk', '01077', 244),
  food('water', '14555', 237),
  food('onion-chopped', '11282', 160),
  food('onion-sliced', '11282', 115),
  food('pepper-chopped', '11333', 149),
  food('pepper-sliced', '11333', 92),
  food('tomato-chopped', '11529', 180),
  food('spinach-raw', '11457', 30),
  food('mushroom-pieces', '11260', 70),
  food('romaine-shredded', '11251', 47),
  food('iceberg-shredded', '11252', 72),
  food('avocado-cubed', '09037', 150),
  food('salt', '02047', 292),
  food('sugar', '19335', 200),
  food('flour', '20081', 125),
]

export const foodWeight = (id: string): FoodWeight | null =>
  FOOD_WEIGHTS.find((one) => one.id === id) ?? null
