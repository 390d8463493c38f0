import type { Metadata } from 'next'
import { HandOverScreen } from '#components/hand-over/hand-over-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.handOver) }

export default function Page() {
  return <HandOverScreen />
}
