import { useState } from 'react'
import { heldOf, wellsOf } from '#components/menu/line/drawn.ts'
import { followSteps, heldIn } from '#components/menu/line/held-in.ts'
import { Home } from '#components/menu/line/home.tsx'
import { LineAbove } from '#components/menu/line/line-above.tsx'
import styles from '#components/menu/menu.module.css'
import { BarePanel } from '#components/menu/pan/bare-panel.tsx'
import { PanPanel } from '#components/menu/pan/pan-panel.tsx'
import { AddWellsPanel, WellPanel } from '#components/menu/pan/well-panel.tsx'
import { unsetIn } from '#components/menu/publish/unset.ts'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { keyOf, namedBy, rowOf, textIn } from '#lib/editor/draft.ts'

type Open = { readonly is: 'bare'; readonly well: string } | { readonly is: 'wells' } | null

/** The line from above, and below it what is said of the pan or well that was chosen. */
export function LineSection() {
  const words = useMenuWords()
  const { draft, missing, problems, place, go, take } = useMenu()
  const [open, setOpen] = useState<Open>(null)
  const [hand, setHand] = useState<string | null>(null)
  /** Component that is held otherwise since its pan was set down. */
  const [followed, setFollowed] = useState<string | null>(null)
  const wells = wellsOf(draft, unsetIn(problems, missing))
  const about = place.about === null ? null : namedBy(place.about)
  const isThere = about !== null && rowOf(draft, about.entity, about.id) !== undefined
  const chosen = isThere && (about.entity === 'pan' || about.entity === 'well') ? about : null
  const heldOfWell = (well: string) => heldOf(textIn(rowOf(draft, 'well', well), 'held'))
  const follows = followed === null ? undefined : rowOf(draft, 'component', followed)
  const show = (next: Open) => {
    setFollowed(null)
    setOpen(next)
    go('line')
  }
  const choose = (entity: 'pan' | 'well', id: string) => {
    setOpen(null)
    setFollowed(null)
    go('line', chosen?.id === id ? null : keyOf(entity, id))
  }
  const panel = () => {
    if (chosen?.entity === 'pan')
      return <PanPanel key={chosen.id} pan={chosen.id} onMove={() => setHand(chosen.id)} />
    if (chosen?.entity === 'well') return <WellPanel key={chosen.id} well={chosen.id} />
    if (wells.length === 0 || open?.is === 'wells')
      return <AddWellsPanel isFirst={wells.length === 0} onDone={() => setOpen(null)} />
    if (open?.is === 'bare')
      return <BarePanel key={open.well} well={open.well} onDone={() => setOpen(null)} />
    return (
      <Panel className={styles.panel ?? ''} title={words.screen.next} label={words.screen.next}>
        <Home />
      </Panel>
    )
  }
  const notched = chosen?.id ?? (open?.is === 'bare' ? open.well : null)
  return (
    <Notch about={notched === null ? [] : [notched]} className={styles.stage ?? ''}>
      <LineAbove
        wells={wells}
        chosen={chosen?.id ?? null}
        asked={hand}
        onTaken={() => setHand(null)}
        onPan={(pan) => choose('pan', pan)}
        onWell={(well) => choose('well', well)}
        onBare={(well) => show({ is: 'bare', well })}
        onAddWell={() => show({ is: 'wells' })}
        onSetDown={(pan, { well, at }) => {
          const others = wells
            .find((one) => one.well === well)
            ?.pans.filter((one) => one.pan !== pan)
          const component = textIn(rowOf(draft, 'pan', pan), 'component')
          const from = heldOfWell(textIn(rowOf(draft, 'pan', pan), 'well'))
          const into = heldOfWell(well)
          const follow = from === into ? [] : followSteps(draft, component, into)
          take(
            { do: 'move', entity: 'pan', id: pan, before: others?.[at]?.pan ?? null, well },
            ...follow,
          )
          setFollowed(follow.length > 0 ? component : null)
        }}
      />
      {follows && (
        <Note kind="watch" role="status">
          {words.line.follows(textIn(follows, 'name'), heldIn(heldOf(textIn(follows, 'held')), ''))}
        </Note>
      )}
      {panel()}
    </Notch>
  )
}
