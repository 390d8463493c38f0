import type { Metadata } from 'next'
import { PrepScreen } from '#components/prep/prep-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.prep) }

export default function Page() {
  return <PrepScreen />
}
