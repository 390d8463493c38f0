import type { Metadata } from 'next'
import { DevicesScreen } from '#components/access/devices-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.devices) }

export default function Page() {
  return <DevicesScreen />
}
