import type { Metadata } from 'next'
import { PansScreen } from '#components/pans/pans-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.pans) }

export default function Page() {
  return <PansScreen />
}
