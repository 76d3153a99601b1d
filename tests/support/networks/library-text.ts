import type { GeneratedNetwork } from './generated.ts'

/**
 * A generated network as a library file, with records as full as those of a real one: charges with solvent, work-up and washes, tasks,
 * operations, hazards, sources. The chemistry balances and means nothing: every compound has one formula, and what is left over is one more.
 */
export function libraryText({ network, yields, ownCost, hours }: GeneratedNetwork): string {
  const { compounds, arcs, head, bodyStart, body, coefficient, buyable } = network
  const sources = [{ citation: 'invented for the measurement', checked: false }]
  const hazards = { codes: ['H302', 'H315', 'H319'], signalWord: 'Warning', from: 'invented for the measurement' }
  const lines: string[] = []
  const material = (id: string, more: object) =>
    lines.push(JSON.stringify({ id, name: `compound ${id}`, kind: 'compound', sources, ...more }))
  for (const [c, id] of compounds.entries())
    material(id, { formula: 'C10H12O2', form: 'solid', hazards, meltingC: 80 + (c % 100), wasteStream: 'solid', buyable: buyable[c] === 1 })
  material('solvent-a', { formula: 'C2H6O', form: 'liquid', densityGPerMl: 0.79, hazards, buyable: true })
  material('solvent-b', { formula: 'C4H8O2', form: 'liquid', densityGPerMl: 0.9, hazards, buyable: true })
  material('salt', { formula: 'NaCl', form: 'solid', buyable: true })
  material('left-over', { formula: 'C10H12O2', form: 'solid' })
  const steps = arcs.map((id, a) => {
    const uses = Array.from({ length: bodyStart[a + 1]! - bodyStart[a]! }, (_, i) => bodyStart[a]! + i)
    const taken = uses.reduce((sum, u) => sum + coefficient[u]!, 0)
    const percent = Math.round(100 * yields[a]!)
    return JSON.stringify({
      id,
      name: `step ${id}`,
      kind: 'reaction',
      reactants: uses.map(u => ({ compound: compounds[body[u]!], coefficient: coefficient[u] })),
      products: [
        { compound: compounds[head[a]!], coefficient: 1 },
        ...(taken > 1 ? [{ compound: 'left-over', coefficient: taken - 1 }] : []),
      ],
      mainProduct: compounds[head[a]!],
      limiting: compounds[body[bodyStart[a]!]!],
      charge: [
        ...uses.map((u, i) => ({
          material: compounds[body[u]!],
          role: i === 0 ? 'substrate' : 'reagent',
          amount: 16.42 * coefficient[u]!,
          unit: 'g',
        })),
        { material: 'solvent-a', role: 'solvent', amount: 100 + (a % 50), unit: 'mL' },
        { material: 'solvent-b', role: 'extraction', amount: 150, unit: 'mL' },
        { material: 'salt', role: 'wash', amount: null, unit: 'g' },
        { material: 'solvent-a', role: 'recrystallisation', amount: null, unit: 'mL' },
      ],
      yieldPercent: {
        low: Math.max(1, percent - 15),
        typical: percent,
        high: Math.min(100, percent + 10),
        from: 'invented for the measurement',
      },
      temperatureC: [20, 80],
      elapsedHours: Math.max(1.5, Number(hours[a]!.toFixed(1))),
      handsOnHours: 1,
      operations: [
        'dissolve, add over half an hour',
        'stir until the start has gone',
        'extract, wash, dry',
        `recrystallise; remark ${Math.round(ownCost[a]!)}`,
      ],
      equipment: ['250 mL flask', 'condenser', 'separating funnel'],
      atmosphere: 'air',
      needsHood: false,
      exotherm: 'mild',
      gasEvolved: [],
      hazardNotes: [],
      holdPoint: 'weeks',
      vesselKind: 'flask',
      confidence: 'memory',
      sources,
    })
  })
  return `{"format":"waybench-library","version":1,"title":"Generated","materials":[\n${lines.join(',\n')}\n],"transformations":[\n${steps.join(',\n')}\n]}\n`
}
