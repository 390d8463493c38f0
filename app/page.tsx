import type { Metadata } from 'next'
import { StartScreen } from '#components/start/start-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.product }

export default function Page() {
  return <StartScreen />
}
