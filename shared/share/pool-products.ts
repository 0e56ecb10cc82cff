import { productName } from '@/shared/day/product-name'

/** A product of the day, as far as a pool of cost can name it. */
export interface PooledProduct {
  readonly id: string
  readonly recipeId: string
  readonly letter: string
  readonly title: string
}

/** The pool that every jar carries. */
export const COMMON_POOL = 'common'

/**
 * The products whose jars carry a pool. "common" is carried by all. Otherwise the pool names a product by its letter, its recipe or a word that its
 * title has ("pickle" for Fresh-pack dill pickles); a name that fits none is carried by all, so that no cost is left without a bearer.
 *
 * @returns product ids in the order given
 */
export function poolProducts(pool: string, products: readonly PooledProduct[]): string[] {
  const name = pool.trim().toLowerCase()
  const ids = (some: readonly PooledProduct[]) => some.map(({ id }) => id)
  if (name === COMMON_POOL) return ids(products)
  const exact = products.filter(({ id, recipeId, letter }) => [id, recipeId, letter].some((each) => each.toLowerCase() === name))
  if (exact.length > 0) return ids(exact)
  const byWord = products.filter(({ title }) =>
    title
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u)
      .some((word) => word.startsWith(name)),
  )
  return ids(byWord.length > 0 ? byWord : products)
}

/** A pool in words: "every jar of the day", the names of its products where it carries the id of a recipe, else as somebody named it. */
export function sayPool(pool: string, products: readonly PooledProduct[]): string {
  if (pool.trim().toLowerCase() === COMMON_POOL) return 'every jar of the day'
  const named = products.filter(({ id, recipeId }) => id === pool || recipeId === pool)
  return named.length === 0 ? pool : [...new Set(named.map(({ title }) => productName(title).toLowerCase()))].join(' and ')
}
