import type { Metadata } from 'next'
import { ReadingsSheetScreen } from '#components/print/readings/readings-sheet-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.readingsSheet) }

export default function Page() {
  return <ReadingsSheetScreen />
}
