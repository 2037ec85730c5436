import CoilsideCore
import CoilsideKit
import SwiftUI

/// Blocks in order. Small ones of one kind that follow each other stand side by side where there is room.
struct BlockList: View {
    let blocks: [Block]
    /// The waiting time that stands on top already.
    var lone: Dwell?

    var body: some View {
        VStack(alignment: .leading, spacing: Measure.gap) {
            ForEach(Arrangement.runs(blocks)) { run in
                if run.blocks.count == 1 {
                    BlockView(block: run.blocks[0], lone: lone)
                } else {
                    LazyVGrid(columns: [GridItem(.adaptive(minimum: 280), spacing: 12, alignment: .top)], alignment: .leading, spacing: 12) {
                        ForEach(Array(run.blocks.enumerated()), id: \.offset) { each in BlockView(block: each.element, lone: nil) }
                    }
                }
            }
        }
    }
}

/// One block, whatever its kind. A kind that is not known here does not compile.
struct BlockView: View {
    let block: Block
    let lone: Dwell?

    var body: some View {
        switch block {
        case .text(let text, let level, let tone):
            WordsBlock(text: text, level: level, tone: tone)
        case .caution(let sign, let title, let text):
            CautionBlock(sign: sign, title: title, text: text)
        case .step(_, let title, let why, let state, let stateText, let blocks):
            StepBlock(title: title, why: why, state: state, stateText: stateText, blocks: blocks, lone: lone)
        case .check(let label, let done, let press):
            CheckBlock(label: label, done: done, press: press)
        case .choice(let field, let label, let options, let chosen, let problem):
            ChoiceBlock(field: field, label: label, options: options, chosen: chosen, problem: problem)
        case .number(let field, let label, let unit, let text, let hint, let before, let problem, let question, let taken, let couldNot):
            NumberBlock(
                field: field, label: label, unit: unit, text: text, hint: hint, before: before, problem: problem, question: question,
                taken: taken, couldNot: couldNot)
        case .textEntry(let field, let label, let text, let lines, let problem, let question):
            EntryBlock(field: field, label: label, text: text, lines: lines, problem: problem, question: question)
        case .ink(let field, let label, let hint, let width, let height, let text, let taken, let problem, let press, let others):
            InkBlock(
                field: field, label: label, hint: hint, width: width, height: height, text: text, taken: taken, problem: problem,
                press: press, others: others)
        case .shot(_, let title, let show, let drawing, let photos, let before, let press, let skip):
            ShotBlock(title: title, show: show, drawing: drawing, photos: photos, before: before, press: press, skip: skip)
        case .dwell:
            if let dwell = Dwell(block), dwell != lone { DwellBlock(dwell: dwell, place: .among) }
        case .mix(let title, let rows, let order, let warning):
            MixBlock(title: title, rows: rows, order: order, warning: warning)
        case .table(let caption, let columns, let rows):
            TableBlock(caption: caption, columns: columns, rows: rows)
        case .chart(let caption, let unit, let bars):
            ChartBlock(caption: caption, unit: unit, bars: bars)
        case .plot(let plot):
            PlotBlock(plot: plot)
        case .link(let label, let to):
            LinkBlock(label: label, to: to)
        case .button(let button):
            PressView(button: button)
        }
    }
}
