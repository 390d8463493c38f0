import { useState } from 'react'
import { ClashNote } from '#components/menu/draft/clash-note.tsx'
import { type DraftNow, useDraft } from '#components/menu/draft/use-draft.ts'
import { HouseSection } from '#components/menu/house/house-section.tsx'
import { ItemsSection } from '#components/menu/items/items-section.tsx'
import { LabelPanel } from '#components/menu/label/label-panel.tsx'
import { LineSection } from '#components/menu/line/line-section.tsx'
import styles from '#components/menu/menu.module.css'
import { NotIn } from '#components/menu/not-in.tsx'
import { openIn } from '#components/menu/publish/open.ts'
import { PublishSection } from '#components/menu/publish/publish-section.tsx'
import { panOf, unsetIn } from '#components/menu/publish/unset.ts'
import { TouchSection } from '#components/menu/touch/touch-section.tsx'
import { MenuProvider, type Place, type Section } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { type EntityKey, keyOf, rowsOf, textIn } from '#lib/editor/draft.ts'

const SECTIONS: readonly Section[] = ['line', 'items', 'touch', 'house', 'publish']

/** How far it is, and that it is saved: always in sight, and quiet. */
function Standing({ now }: { readonly now: DraftNow }) {
  const { screen: words } = useMenuWords()
  const pans = rowsOf(now.draft, 'pan')
  const unset = unsetIn(now.problems, now.missing)
  const set = pans.filter(({ id, row }) => !unset.has(id) && !unset.has(textIn(row, 'component')))
  const { wrong, missing } = openIn(now.problems, now.missing)
  const { firstOrder, keepApart, printing } = missing
  return (
    <p className={styles.standing}>
      <span>{words.pansSet(set.length, pans.length)}</span>
      <span>
        {words.missing.firstOrder}: <b>{words.missingShort(firstOrder.length)}</b>
      </span>
      <span>
        {words.missing.keepApart}: <b>{words.missingShort(keepApart.length)}</b>
      </span>
      <span>
        {words.missing.printing}: <b>{words.missingShort(printing.length)}</b>
      </span>
      {wrong.length > 0 && <b data-wrong="">{words.problems(wrong.length)}</b>}
      <span role="status" data-state={now.state}>
        {now.state === 'saved'
          ? words.saved
          : now.state === 'lost'
            ? words.notSaved
            : now.state === 'saving'
              ? words.saving
              : ''}
      </span>
    </p>
  )
}

function Sections({
  now,
  onStations,
}: {
  readonly now: DraftNow
  readonly onStations: () => void
}) {
  const words = useMenuWords()
  const [place, setPlace] = useState<Place>({ section: 'line', about: null })
  const [label, setLabel] = useState<string | null>(null)
  const go = (section: Section, about: EntityKey | null = null) => {
    setLabel(null)
    setPlace({ section, about })
  }
  const onLabel = (ingredient: string) => {
    // The label is asked for by the draft as it is saved.
    void now.settle().then(() => setLabel(ingredient))
  }
  const goTo: Parameters<typeof MenuProvider>[0]['now']['goTo'] = (entity, id) => {
    if (entity === 'ingredient') return onLabel(id)
    if (entity === 'contact') return go('touch', keyOf(entity, id))
    if (entity === 'item') return go('items', keyOf(entity, id))
    if (entity === 'well') return go('line', keyOf(entity, id))
    const pan = panOf(now.draft, entity, id)
    if (pan !== null) return go('line', keyOf('pan', pan))
    go(entity === 'house' || entity === 'safety' || entity === 'day' ? 'house' : 'line')
  }
  const name = textIn(now.draft.rows.house, 'name')
  return (
    <MenuProvider now={{ ...now, place, go, goTo, onLabel }}>
      <main className={styles.page} data-section={place.section}>
        <header className={styles.top}>
          <div>
            <h1>{name}</h1>
            <p>
              {now.published === null
                ? words.screen.draft
                : now.changed
                  ? words.screen.changedSince(now.published)
                  : words.screen.published(now.published)}
              {' · '}
              <button type="button" className={styles.away} onClick={onStations}>
                {words.screen.toStations}
              </button>
            </p>
          </div>
          <nav className={styles.tabs} aria-label={words.screen.title}>
            {SECTIONS.map((section) => (
              <button
                key={section}
                type="button"
                aria-current={place.section === section ? 'page' : undefined}
                onClick={() => go(section)}
              >
                {words.screen.sections[section]}
              </button>
            ))}
          </nav>
        </header>
        <Standing now={now} />
        <ClashNote />
        {label !== null && (
          <LabelPanel
            key={label}
            stationId={now.draft.station}
            ingredient={label}
            onDone={(isSaved) => {
              setLabel(null)
              if (isSaved) void now.again()
            }}
          />
        )}
        {label === null && place.section === 'line' && <LineSection />}
        {label === null && place.section === 'items' && <ItemsSection />}
        {label === null && place.section === 'touch' && <TouchSection />}
        {label === null && place.section === 'house' && <HouseSection />}
        {label === null && place.section === 'publish' && <PublishSection />}
      </main>
    </MenuProvider>
  )
}

/** One station while it is set up. */
export function StationScreen({
  station,
  onStations,
}: {
  readonly station: string
  readonly onStations: () => void
}) {
  const { now, lost } = useDraft(station)
  if (now === null) return <NotIn lost={lost} onStations={onStations} />
  return <Sections now={now} onStations={onStations} />
}
