import type { Metadata } from 'next'
import { DeliveriesScreen } from '#components/receiving/deliveries-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.deliveries) }

export default function Page() {
  return <DeliveriesScreen />
}
