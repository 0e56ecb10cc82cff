import { BEANS_PEAS_AND_CORN } from './data/beans-peas-and-corn'
import { FRUIT } from './data/fruit'
import { FRUIT_UNDER_PRESSURE } from './data/fruit-under-pressure'
import { JUICES_AND_PRESERVES } from './data/juices-and-preserves'
import { PICKLES_AND_RELISHES } from './data/pickles-and-relishes'
import { SOUPS_MEAT_AND_FISH } from './data/soups-meat-and-fish'
import { TOMATO_JUICE_AND_SAUCES } from './data/tomato-juice-and-sauces'
import { TOMATOES } from './data/tomatoes'
import { VEGETABLES } from './data/vegetables'
import type { PublishedRow } from './published-row'

/** Every row that was read in its publication. Only these give a time. */
export const PUBLISHED_ROWS: readonly PublishedRow[] = [
  ...FRUIT,
  ...FRUIT_UNDER_PRESSURE,
  ...JUICES_AND_PRESERVES,
  ...TOMATOES,
  ...TOMATO_JUICE_AND_SAUCES,
  ...PICKLES_AND_RELISHES,
  ...VEGETABLES,
  ...BEANS_PEAS_AND_CORN,
  ...SOUPS_MEAT_AND_FISH,
]
