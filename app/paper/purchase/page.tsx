import type { Metadata } from 'next'
import { PurchaseListScreen } from '#components/print/purchase/purchase-list-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.purchaseList) }

export default function Page() {
  return <PurchaseListScreen />
}
