import { useState } from 'react'
import { About, Helped } from '#components/menu/fields/help.tsx'
import { wellsOf } from '#components/menu/line/drawn.ts'
import styles from '#components/menu/menu.module.css'
import { AddTouch } from '#components/menu/touch/add-touch.tsx'
import { LitLine } from '#components/menu/touch/lit-line.tsx'
import touch from '#components/menu/touch/touch.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Panel } from '#components/ui/panel.tsx'
import { namedBy, type Row, rowOf, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import {
  apartFields,
  confirmSteps,
  openContacts,
  outdatedContacts,
} from '#lib/editor/proposed-contacts.ts'
import { CONTACT_KINDS } from '#lib/station/shapes/station-parts-schema.ts'

interface Touching {
  readonly id: string
  readonly row: Row
  /** Nobody has answered it yet. */
  readonly isOpen: boolean
  readonly touches: boolean
}

/** What touches what: proposed from the drawing, confirmed once, each taken out where it never does. */
export function TouchSection() {
  const words = useMenuWords()
  const { draft, place, take, go } = useMenu()
  const [apart, setApart] = useState<ReadonlySet<string>>(new Set())
  const [chosen, setChosen] = useState<string | null>(
    place.about === null ? null : namedBy(place.about).id,
  )
  const [adding, setAdding] = useState<ReadonlySet<string> | null>(null)
  const outdated = new Set(outdatedContacts(draft).map(({ id }) => id))
  const all: readonly Touching[] = [
    ...openContacts(draft).map(({ id, row }) => ({
      id,
      row,
      isOpen: true,
      touches: !apart.has(id),
    })),
    ...rowsOf(draft, 'contact')
      .filter(({ id }) => !outdated.has(id))
      .map(({ id, row }) => ({
        id,
        row,
        isOpen: false,
        touches: row.touches !== false,
      })),
  ]
  const open = all.filter(({ isOpen }) => isOpen)
  const isSaid = draft.rows.house?.contactsSaid === true
  const isSettled = isSaid && open.length === 0
  const nameOf = (component: string) =>
    textIn(rowOf(draft, 'component', component), 'name') || words.line.noName
  const say = ({ row }: Touching) => {
    const kind = CONTACT_KINDS.find((one) => one === textIn(row, 'kind')) ?? 'beside'
    return words.item.contact(kind, textsIn(row, 'components').map(nameOf))
  }
  const answer = ({ id, row, isOpen }: Touching, touches: boolean) => {
    if (isOpen) {
      const next = new Set(apart)
      if (touches) next.delete(id)
      else next.add(id)
      setApart(next)
    } else
      take({
        do: 'put',
        entity: 'contact',
        id,
        fields: touches ? {} : apartFields(draft, row),
        ...(touches ? { clear: ['touches', 'of'] } : {}),
      })
  }
  const at = all.find(({ id }) => id === chosen)
  const lit = adding ?? new Set(at ? textsIn(at.row, 'components') : [])
  return (
    <Notch about={lit.size > 0 ? ['lit'] : []} className={styles.stage ?? ''}>
      <LitLine
        wells={wellsOf(draft, new Set())}
        threads={all
          .filter(({ touches }) => touches)
          .map(({ id, row }) => ({
            id,
            components: textsIn(row, 'components'),
            isChosen: chosen === id,
          }))}
        lit={lit}
        onPan={
          adding === null
            ? null
            : (component) => {
                const next = new Set(adding)
                if (!next.delete(component)) next.add(component)
                setAdding(next)
              }
        }
      />
      <Panel className={styles.panel ?? ''} title={words.item.touch} label={words.item.touch}>
        <Helped
          acts={
            adding === null && (
              <>
                <Button kind="quiet" onClick={() => setAdding(new Set())}>
                  {words.item.addTouch}
                </Button>
                {isSettled ? (
                  <Button kind="main" onClick={() => go('publish')}>
                    {words.screen.toPublish}
                  </Button>
                ) : (
                  <Button kind="main" onClick={() => take(...confirmSteps(draft, [...apart]))}>
                    {words.item.confirm(open.length)}
                  </Button>
                )}
              </>
            )
          }
        >
          <p>{isSettled ? words.item.confirmed : words.item.touchWhat}</p>
          {adding !== null ? (
            <AddTouch components={[...adding]} onDone={() => setAdding(null)} />
          ) : (
            <>
              {all.length === 0 && <p>{words.item.touchNone}</p>}
              <ul className={touch.list}>
                {all.map((one) => (
                  <li
                    key={one.id}
                    data-open={one.isOpen || undefined}
                    data-never={!one.touches || undefined}
                    onPointerEnter={() => setChosen(one.id)}
                    onFocus={() => setChosen(one.id)}
                  >
                    <span>
                      <b>{say(one)}</b> {one.isOpen && words.item.proposed}
                    </span>
                    <About of="touches">
                      <Choice
                        legend={say(one)}
                        isBare
                        ways={[
                          { id: 'yes', label: words.item.touches },
                          { id: 'no', label: words.item.never },
                        ]}
                        chosen={one.touches ? 'yes' : 'no'}
                        onChoose={(id) => answer(one, id === 'yes')}
                      />
                    </About>
                  </li>
                ))}
              </ul>
            </>
          )}
        </Helped>
      </Panel>
    </Notch>
  )
}
