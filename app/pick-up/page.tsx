import type { Metadata } from 'next'
import { PickUpScreen } from '#components/pick-up/pick-up-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.pickUp) }

export default function Page() {
  return <PickUpScreen />
}
