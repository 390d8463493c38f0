/** What stands in the place of the cards once something on the board is tapped: fetched together. */
import { ClosePanel as Close } from '#components/pans/close-panel.tsx'
import { ItemPanel as Item } from '#components/pans/item-panel.tsx'
import { PanPanel as Pan } from '#components/pans/pan-panel.tsx'

export const ClosePanel = Close
export const ItemPanel = Item
export const PanPanel = Pan
