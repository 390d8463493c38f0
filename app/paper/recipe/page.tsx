import type { Metadata } from 'next'
import { RecipeCardScreen } from '#components/print/recipe/recipe-card-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.recipeCard) }

export default function Page() {
  return <RecipeCardScreen />
}
