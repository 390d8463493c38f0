import type { Metadata } from 'next'
import { HouseScreen } from '#components/access/house-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.house) }

export default function Page() {
  return <HouseScreen />
}
