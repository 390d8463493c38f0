import type { Metadata } from 'next'
import { TastingScreen } from '#components/tasting/tasting-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.tasting) }

export default function Page() {
  return <TastingScreen />
}
