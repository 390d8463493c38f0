import { useCallback, useEffect, useState } from 'react'
import { keep, readKept } from '#components/device/device-shelf.ts'
import {
  isStock,
  LABEL_STOCK,
  MOST_OFFSET,
  NO_OFFSET,
  type Offset,
  type Stock,
  type StockId,
} from '#lib/paper/labels/label-stock.ts'
import type { Paper } from '#lib/paper/page/papers.ts'

const KEY = 'label-paper'

interface Remembered {
  readonly stock: StockId | null
  readonly offset: Offset
}

const within = (value: unknown): number =>
  typeof value === 'number' && Number.isFinite(value)
    ? Math.min(MOST_OFFSET, Math.max(-MOST_OFFSET, value))
    : 0

/** What this device printed on last, and by how much its printer is off; nothing where that isn't there. */
const remembered = (): Remembered => {
  try {
    const said: unknown = JSON.parse(readKept(KEY) ?? 'null')
    if (typeof said !== 'object' || said === null) return { stock: null, offset: NO_OFFSET }
    return {
      stock: 'stock' in said && isStock(said.stock) ? said.stock : null,
      offset: {
        x: within('x' in said ? said.x : 0),
        y: within('y' in said ? said.y : 0),
      },
    }
  } catch {
    return { stock: null, offset: NO_OFFSET }
  }
}

export interface StockNow {
  readonly id: StockId
  readonly stock: Stock
  readonly offset: Offset
  /** The first label of a sheet that is still there, from 1; of this sheet only, so it is never remembered. */
  readonly first: number
  readonly choose: (id: StockId) => void
  readonly move: (offset: Offset) => void
  readonly begin: (first: number) => void
}

/** What labels are printed on, as this device did last. */
export const useStock = (usual: Paper): StockNow => {
  const [said, setSaid] = useState<Remembered>({ stock: null, offset: NO_OFFSET })
  const [first, setFirst] = useState(1)
  useEffect(() => setSaid(remembered()), [])
  const id = said.stock ?? (usual === 'letter' ? 'cut-letter' : 'cut-a4')
  const put = useCallback((next: Remembered) => {
    setSaid(next)
    keep(KEY, JSON.stringify({ stock: next.stock, ...next.offset }))
  }, [])
  return {
    id,
    stock: LABEL_STOCK[id],
    offset: said.offset,
    first,
    choose: (stock) => {
      setFirst(1)
      put({ ...said, stock })
    },
    move: (offset) => put({ ...said, offset: { x: within(offset.x), y: within(offset.y) } }),
    begin: setFirst,
  }
}
