import type { Metadata } from 'next'
import { PlanScreen } from '#components/plan/plan-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.plan) }

export default function Page() {
  return <PlanScreen />
}
