/** What comes once something on the board is tapped: fetched together, with the words for it. */
import type { ComponentProps } from 'react'
import { FoodDialog as Food } from '#components/job/food-dialog.tsx'
import { FoodWordsProvider } from '#components/job/food-words.tsx'
import { ClosePanel as Close } from '#components/pans/close-panel.tsx'
import { ItemPanel as Item } from '#components/pans/item-panel.tsx'
import { PanPanel as Pan } from '#components/pans/pan-panel.tsx'

export function ClosePanel(props: ComponentProps<typeof Close>) {
  return (
    <FoodWordsProvider>
      <Close {...props} />
    </FoodWordsProvider>
  )
}

export function ItemPanel(props: ComponentProps<typeof Item>) {
  return (
    <FoodWordsProvider>
      <Item {...props} />
    </FoodWordsProvider>
  )
}

export function PanPanel(props: ComponentProps<typeof Pan>) {
  return (
    <FoodWordsProvider>
      <Pan {...props} />
    </FoodWordsProvider>
  )
}

export function FoodDialog(props: ComponentProps<typeof Food>) {
  return (
    <FoodWordsProvider>
      <Food {...props} />
    </FoodWordsProvider>
  )
}
