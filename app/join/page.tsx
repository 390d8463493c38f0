import type { Metadata } from 'next'
import { JoinScreen } from '#components/access/join-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.join) }

export default function Page() {
  return <JoinScreen />
}
