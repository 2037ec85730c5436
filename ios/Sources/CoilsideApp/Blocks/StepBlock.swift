import CoilsideCore
import CoilsideKit
import SwiftUI

/// A step with what belongs to it.
struct StepBlock: View {
    let title: String
    let why: String
    let state: StepState
    let stateText: String
    let blocks: [Block]
    let lone: Dwell?

    var body: some View {
        VStack(alignment: .leading, spacing: Measure.gap) {
            HStack(alignment: .top, spacing: 12) {
                Glyph(glyph, size: 28).foregroundStyle(ink)
                VStack(alignment: .leading, spacing: 4) {
                    Text(verbatim: title).font(.title3.weight(.semibold)).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
                    if !stateText.isEmpty { Text(verbatim: stateText).font(.subheadline).foregroundStyle(ink) }
                }
            }
            .accessibilityElement(children: .combine)
            if !why.isEmpty { Text(verbatim: why).foregroundStyle(Palette.soft) }
            if !blocks.isEmpty { BlockList(blocks: blocks, lone: lone) }
        }
        .paper(edge: state == .open || state == .running ? Palette.lead : Palette.line)
    }

    private var glyph: String {
        switch state {
        case .open: "open"
        case .gated: "gated"
        case .running: "running"
        case .done: "done"
        case .skipped: "skipped"
        }
    }

    private var ink: Color {
        switch state {
        case .open, .running: Palette.lead
        case .gated: Palette.attention
        case .done: Palette.good
        case .skipped: Palette.soft
        }
    }
}
