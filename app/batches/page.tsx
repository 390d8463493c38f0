import type { Metadata } from 'next'
import { BatchesScreen } from '#components/batches/batches-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.batches) }

export default function Page() {
  return <BatchesScreen />
}
