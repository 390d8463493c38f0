import type { Metadata } from 'next'
import { SheetScreen } from '#components/sheet/sheet-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.sheet) }

export default function Page() {
  return <SheetScreen />
}
