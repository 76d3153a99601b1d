import type { CanvasEditor, Molecule } from 'openchemlib'
import { useEffect, useRef } from 'preact/hooks'
import { smilesWithGroups, withGroups } from '../../core/chemistry/hands-of.ts'

/** So long after the last letter the drawing follows the SMILES, ms. */
const restMs = 250

/**
 * A structure to be drawn with the pointer: the editor of the chemistry toolkit, fetched when it is first opened.
 *
 * @param smiles   what stands in the field; the drawing follows it, except where it came from the drawing itself
 * @param onDrawn  tells the SMILES of what was drawn; empty where nothing is left
 * @param onFault  the editor could not be fetched
 */
export function StructureEditor(props: {
  readonly smiles: string
  readonly onDrawn: (smiles: string) => void
  readonly onFault: () => void
}) {
  const place = useRef<HTMLDivElement>(null)
  const board = useRef<Board | null>(null)
  const latest = useRef(props)
  latest.current = props
  useEffect(() => {
    let gone = false
    import('openchemlib').then(
      ({ CanvasEditor: Editor, Molecule: Molecules }) => {
        if (gone || place.current === null) return
        board.current = boardIn(place.current, Editor, Molecules, smiles => latest.current.onDrawn(smiles))
        board.current.follow(latest.current.smiles)
      },
      () => latest.current.onFault(),
    )
    return () => {
      gone = true
      board.current?.close()
      board.current = null
    }
  }, [])
  useEffect(() => {
    const timer = setTimeout(() => board.current?.follow(props.smiles), restMs)
    return () => clearTimeout(timer)
  }, [props.smiles])
  return (
    <section aria-label="Drawing board" class="board-part">
      <div class="board" ref={place} />
      <p class="s soft help">
        Drawn with the pointer: choose a bond, a ring or an atom at the left, then press where it goes. Red words about chirality only say
        that no wedge tells one hand from the other. The SMILES above says the same and is all that the keyboard needs.
      </p>
    </section>
  )
}

interface Board {
  /** Shows what a SMILES stands for; one that cannot be read leaves the drawing as it is. */
  follow(smiles: string): void
  close(): void
}

function boardIn(element: HTMLElement, Editor: typeof CanvasEditor, Molecules: typeof Molecule, onDrawn: (smiles: string) => void): Board {
  const editor = new Editor(element, { initialMode: 'molecule' })
  let told = ''
  editor.setOnChangeListener(({ type, isUserEvent }) => {
    if (type !== 'molecule' || !isUserEvent) return
    const molecule = editor.getMolecule()
    told = molecule.getAllAtoms() === 0 ? '' : smilesWithGroups(molecule, Molecules)
    onDrawn(told)
  })
  return {
    follow: smiles => {
      const text = smiles.trim()
      if (text === told) return
      try {
        editor.setMolecule(text === '' ? new Molecules(0, 0) : withGroups(text, one => Molecules.fromSmiles(one), Molecules))
        told = text
      } catch {
        // Half a SMILES is no structure yet; the field itself says what is wrong with it.
      }
    },
    close: () => editor.destroy(),
  }
}
