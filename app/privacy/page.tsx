import type { Metadata } from 'next'
import { PrivacyScreen } from '#components/access/privacy-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.privacy) }

export default function Page() {
  return <PrivacyScreen />
}
