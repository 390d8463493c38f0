import type { Metadata } from 'next'
import { PackListScreen } from '#components/print/pack/pack-list-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.packList) }

export default function Page() {
  return <PackListScreen />
}
