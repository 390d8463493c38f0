import type { Metadata } from 'next'
import { RecipeScreen } from '#components/menu/recipe/recipe-screen.tsx'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.recipe) }

export default function Page() {
  return <RecipeScreen />
}
