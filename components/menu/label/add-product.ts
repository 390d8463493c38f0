/** A substitute is a row's own: it is added to the station's draft, and its label is the house's. */
import { look, tell } from '#components/access/ask.ts'
import type { Row } from '#lib/editor/draft.ts'
import { recordsIn, textIn } from '#lib/editor/draft.ts'
import type { MenuAnswer, MenuDraft, Saved, SaveSteps } from '#lib/editor/http.ts'

/** An id that none of the others has. */
const nextId = (products: readonly Row[]): string => {
  const taken = new Set(products.map((one) => textIn(one, 'id')))
  let number = products.length + 1
  while (taken.has(`product-${number}`)) number += 1
  return `product-${number}`
}

/** @returns the id of the product; a code where it wasn't added. */
export const addProduct = async (
  station: string,
  ingredient: string,
  named: { readonly maker: string; readonly pack: string },
): Promise<{ readonly id: string } | { readonly code: string }> => {
  const now = await look<MenuDraft>(`/menu/draft?station=${encodeURIComponent(station)}`)
  if (!('rows' in now)) return { code: 'code' in now ? now.code : 'failed' }
  const row = now.rows[`ingredient:${ingredient}`]
  if (!row) return { code: 'no-such-ingredient' }
  const products = recordsIn(row, 'products')
  const id = nextId(products)
  const added = {
    id,
    ...(named.maker === '' ? {} : { maker: named.maker }),
    ...(named.pack === '' ? {} : { pack: named.pack }),
  }
  const asked: SaveSteps = {
    station,
    saw: now.saw,
    steps: [
      {
        do: 'put',
        entity: 'ingredient',
        id: ingredient,
        fields: { products: [...products, added] },
      },
    ],
  }
  const answer = (await tell('/menu/steps', asked)) as MenuAnswer<Saved>
  return answer.code === 'done' ? { id } : { code: answer.code }
}
