import { useEffect, useRef } from 'react'
import type { OrderingDesk } from '#components/counter/use-ordering.ts'
import { orderToKeep, restoredOrder } from '#lib/rooms/orders/views/kept-order.ts'

const KEY = 'level-scoop/order'

const forget = (): void => {
  try {
    sessionStorage.removeItem(KEY)
  } catch {
    // A browser that keeps nothing has nothing to forget.
  }
}

/** Keeps a half-typed order in the tab's own storage, and goes on with it once after a load. */
export function KeptOrder({ desk }: { readonly desk: OrderingDesk }) {
  const { state, ordering, tap } = desk
  const isRead = useRef(false)
  useEffect(() => {
    try {
      if (!isRead.current) {
        isRead.current = true
        const kept = restoredOrder(sessionStorage.getItem(KEY), state)
        if (kept) {
          tap({ act: 'restored', ordering: kept })
          return
        }
      }
      const text = orderToKeep(ordering, state.service)
      if (text === null) sessionStorage.removeItem(KEY)
      else sessionStorage.setItem(KEY, text)
    } catch {
      // Where a browser keeps nothing, a reload begins anew.
    }
  }, [ordering, state, tap])
  // With the service it goes, too: this is drawn as long as that is open.
  useEffect(() => () => forget(), [])
  return null
}
