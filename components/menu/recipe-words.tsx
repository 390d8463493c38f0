'use client'

import { createContext, type ReactNode, useContext } from 'react'
import { givenWords } from '#components/live/given-words.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'
import { measuredEn } from '#lib/words/recipe/measured-en.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'

const english = { ...recipeEn, measured: measuredEn }

export type RecipeWords = InAnyLanguage<typeof english>

const Context = createContext<RecipeWords | null>(null)

export function RecipeWordsProvider({ children }: { readonly children: ReactNode }) {
  return <Context value={english}>{children}</Context>
}

export const useRecipeWords = (): RecipeWords => givenWords(useContext(Context))
