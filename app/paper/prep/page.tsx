import type { Metadata } from 'next'
import { PrepSheetScreen } from '#components/print/prep/prep-sheet-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.prepSheet) }

export default function Page() {
  return <PrepSheetScreen />
}
