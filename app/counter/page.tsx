import type { Metadata } from 'next'
import { CounterScreen } from '#components/counter/counter-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.counter) }

export default function Page() {
  return <CounterScreen />
}
