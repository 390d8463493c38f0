import type { Metadata } from 'next'
import { AllergenPaperScreen } from '#components/print/allergens/allergen-paper-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.sheet) }

export default function Page() {
  return <AllergenPaperScreen />
}
