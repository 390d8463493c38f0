import type { Metadata } from 'next'
import { LabelScreen } from '#components/menu/label/label-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.label) }

export default function Page() {
  return <LabelScreen />
}
