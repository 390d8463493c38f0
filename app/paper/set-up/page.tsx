import type { Metadata } from 'next'
import { SetUpSheetScreen } from '#components/print/set-up/set-up-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.setUpSheet) }

export default function Page() {
  return <SetUpSheetScreen />
}
