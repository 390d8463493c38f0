/** The words of panels and forms, apart from the texts: what is fetched alone asks for them as well. */
import { createContext, useContext } from 'react'
import type { foodEnglish } from '#components/job/english-food-words.ts'
import { givenWords } from '#components/live/given-words.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

export type FoodWords = InAnyLanguage<typeof foodEnglish>

export const FoodWordsContext = createContext<FoodWords | null>(null)

export const useFoodWords = (): FoodWords => givenWords(useContext(FoodWordsContext))
