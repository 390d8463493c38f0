import type { Metadata } from 'next'
import { LarderLabelsScreen } from '#components/print/larder/larder-labels-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.larderLabels) }

export default function Page() {
  return <LarderLabelsScreen />
}
