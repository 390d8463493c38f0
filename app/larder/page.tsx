import type { Metadata } from 'next'
import { LarderScreen } from '#components/larder/larder-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.larder) }

export default function Page() {
  return <LarderScreen />
}
