import type { Metadata } from 'next'
import { AssemblyScreen } from '#components/assembly/assembly-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.assembly) }

export default function Page() {
  return <AssemblyScreen />
}
