import { useState } from 'react'
import { Helped } from '#components/menu/fields/help.tsx'
import { Leaves } from '#components/menu/leaves.tsx'
import styles from '#components/menu/menu.module.css'
import { AgainLeaf } from '#components/menu/pan/again-leaf.tsx'
import { GuestLeaf } from '#components/menu/pan/guest-leaf.tsx'
import { MadeLeaf } from '#components/menu/pan/made-leaf.tsx'
import { PortionLeaf } from '#components/menu/pan/portion-leaf.tsx'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { keyOf, rowOf, rowsOf, textIn } from '#lib/editor/draft.ts'

const LEAVES = ['made', 'portion', 'again', 'guest'] as const
type Leaf = (typeof LEAVES)[number]

/** All that is said of one pan and of what it holds, in its notch below the line. */
export function PanPanel({ pan, onMove }: { readonly pan: string; readonly onMove: () => void }) {
  const words = useMenuWords()
  const { draft, go } = useMenu()
  const [leaf, setLeaf] = useState<Leaf>('made')
  const row = rowOf(draft, 'pan', pan)
  const component = textIn(row, 'component')
  const name = textIn(rowOf(draft, 'component', component), 'name')
  const wells = rowsOf(draft, 'well')
  const pans = wells.flatMap(({ id }) =>
    rowsOf(draft, 'pan').filter((one) => textIn(one.row, 'well') === id),
  )
  const next = pans[1 + pans.findIndex(({ id }) => id === pan)]
  const nextName = textIn(rowOf(draft, 'component', textIn(next?.row, 'component')), 'name')
  const onward = () => {
    if (leaf === 'made') return setLeaf('portion')
    setLeaf('made')
    if (next) go('line', keyOf('pan', next.id))
    else go('line')
  }
  return (
    <Panel
      className={styles.panel ?? ''}
      title={name === '' ? words.pan.noName : name}
      label={name === '' ? words.pan.noName : name}
      beside={
        <Leaves
          legend={words.screen.parts}
          leaves={LEAVES.map((id) => ({ id, label: words.pan.leaves[id] }))}
          chosen={leaf}
          onChoose={setLeaf}
        />
      }
      back={words.screen.close}
      onBack={() => go('line')}
    >
      <Helped
        acts={
          <Button
            kind="main"
            sub={leaf === 'made' ? undefined : next ? words.pan.next(nextName || '…') : undefined}
            onClick={onward}
          >
            {leaf === 'made' ? words.pan.toPortion : words.pan.keep}
          </Button>
        }
      >
        <div className={styles.leaf} data-leaf={leaf}>
          {leaf === 'made' && <MadeLeaf component={component} />}
          {leaf === 'portion' && <PortionLeaf pan={pan} component={component} />}
          {leaf === 'again' && <AgainLeaf component={component} />}
          {leaf === 'guest' && <GuestLeaf pan={pan} component={component} onMove={onMove} />}
        </div>
      </Helped>
    </Panel>
  )
}
