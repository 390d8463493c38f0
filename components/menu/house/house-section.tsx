import { useState } from 'react'
import { Helped } from '#components/menu/fields/help.tsx'
import { AllergensLeaf } from '#components/menu/house/allergens-leaf.tsx'
import { BellsLeaf } from '#components/menu/house/bells-leaf.tsx'
import { DayLeaf } from '#components/menu/house/day-leaf.tsx'
import { HouseLeaf } from '#components/menu/house/house-leaf.tsx'
import { KitchenLeaf } from '#components/menu/house/kitchen-leaf.tsx'
import { LimitsLeaf } from '#components/menu/house/limits-leaf.tsx'
import { Leaves } from '#components/menu/leaves.tsx'
import styles from '#components/menu/menu.module.css'
import { useMenuWords } from '#components/menu/words.tsx'
import { Panel } from '#components/ui/panel.tsx'

const LEAVES = ['house', 'allergens', 'day', 'limits', 'kitchen', 'bells'] as const

/** What holds of the whole station: where it is, what is asked, how its day goes. */
export function HouseSection() {
  const words = useMenuWords()
  const [leaf, setLeaf] = useState<(typeof LEAVES)[number]>('house')
  return (
    <Panel
      className={styles.panel ?? ''}
      title={words.screen.sections.house}
      label={words.screen.sections.house}
      beside={
        <Leaves
          legend={words.screen.parts}
          leaves={LEAVES.map((id) => ({ id, label: words.house.leaves[id] }))}
          chosen={leaf}
          onChoose={setLeaf}
        />
      }
    >
      <Helped>
        <div className={styles.leaf} data-leaf={leaf}>
          {leaf === 'house' && <HouseLeaf />}
          {leaf === 'allergens' && <AllergensLeaf />}
          {leaf === 'day' && <DayLeaf />}
          {leaf === 'limits' && <LimitsLeaf />}
          {leaf === 'kitchen' && <KitchenLeaf />}
          {leaf === 'bells' && <BellsLeaf />}
        </div>
      </Helped>
    </Panel>
  )
}
