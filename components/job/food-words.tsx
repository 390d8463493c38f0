import type { ReactNode } from 'react'
import { foodEnglish } from '#components/job/english-food-words.ts'
import { FoodWordsContext } from '#components/job/use-food-words.ts'
import { InChargeWordsProvider } from '#components/start/in-charge-words.tsx'

export function FoodWordsProvider({ children }: { readonly children: ReactNode }) {
  return (
    <InChargeWordsProvider>
      <FoodWordsContext value={foodEnglish}>{children}</FoodWordsContext>
    </InChargeWordsProvider>
  )
}
