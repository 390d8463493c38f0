import type { Metadata } from 'next'
import { LabelsScreen } from '#components/print/labels/labels-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.labels) }

export default function Page() {
  return <LabelsScreen />
}
