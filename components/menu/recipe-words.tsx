'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'

export type RecipeWords = InAnyLanguage<typeof recipeEn>

const Context = createContext<RecipeWords | null>(null)

export function RecipeWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={recipeEn}>{children}</Context>
}

export const useRecipeWords = (): RecipeWords => givenWords(useContext(Context))
