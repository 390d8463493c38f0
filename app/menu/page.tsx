import type { Metadata } from 'next'
import { MenuScreen } from '#components/menu/menu-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.menu) }

export default function Page() {
  return <MenuScreen />
}
