import type { Metadata } from 'next'
import { CarryScreen } from '#components/menu/carry/carry-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.carry) }

export default function Page() {
  return <CarryScreen />
}
