import CoilsideCore
import CoilsideKit
import SwiftUI

/// One thing to tick.
struct CheckBlock: View {
    let label: String
    let done: Bool
    let press: Action
    @Environment(Companion.self) private var companion

    var body: some View {
        Button {
            companion.press(press)
        } label: {
            HStack(spacing: 14) {
                RoundedRectangle(cornerRadius: 8)
                    .stroke(done ? Palette.good : Palette.edge, style: StrokeStyle(lineWidth: 2))
                    .frame(width: 34, height: 34)
                    .overlay { if done { Glyph("done") } }
                Text(verbatim: label).foregroundStyle(Palette.ink).multilineTextAlignment(.leading)
                Spacer(minLength: 0)
                if companion.session.waits(press) { ProgressView() }
            }
            .foregroundStyle(Palette.good)
            .frame(maxWidth: .infinity, minHeight: Measure.target, alignment: .leading)
        }
        .buttonStyle(RowStyle(marked: done))
        .accessibilityAddTraits(done ? [.isToggle, .isSelected] : .isToggle)
    }
}

/// One of several.
struct ChoiceBlock: View {
    let field: String
    let label: String
    let options: [ChoiceOption]
    let chosen: String?
    let problem: String?
    @Environment(Companion.self) private var companion

    var body: some View {
        VStack(alignment: .leading, spacing: 10) {
            Text(verbatim: label).font(.headline).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
            LazyVGrid(columns: [GridItem(.adaptive(minimum: short ? 140 : 280), spacing: 10)], alignment: .leading, spacing: 10) {
                ForEach(options, id: \.value) { option in row(option) }
            }
            if let problem { Marked(glyph: "danger", text: problem, ink: Palette.danger) }
        }
        .accessibilityElement(children: .contain)
        .accessibilityLabel(label)
    }

    private var short: Bool { options.allSatisfy { $0.label.count <= 16 } }

    private func row(_ option: ChoiceOption) -> some View {
        let isChosen = option.value == chosen
        let press = Action.choose(field: field, option: option.value)
        return Button {
            companion.press(press)
        } label: {
            HStack(spacing: 12) {
                Circle().stroke(isChosen ? Palette.lead : Palette.edge, style: StrokeStyle(lineWidth: 2)).frame(width: 28, height: 28)
                    .overlay { if isChosen { Glyph("done", size: 18) } }
                Text(verbatim: option.label).foregroundStyle(Palette.ink).multilineTextAlignment(.leading)
                Spacer(minLength: 0)
                if companion.session.waits(press) { ProgressView() }
            }
            .foregroundStyle(Palette.lead)
            .frame(maxWidth: .infinity, minHeight: Measure.target, alignment: .leading)
        }
        .buttonStyle(RowStyle(marked: isChosen))
        .accessibilityAddTraits(isChosen ? .isSelected : [])
    }
}

/// A row to press: paper with an edge, washed where it is chosen.
struct RowStyle: ButtonStyle {
    let marked: Bool

    func makeBody(configuration: Configuration) -> some View {
        configuration.label
            .padding(.horizontal, 14)
            .padding(.vertical, 6)
            .background(marked ? Palette.leadWash : Palette.paper, in: RoundedRectangle(cornerRadius: Measure.round))
            .overlay {
                RoundedRectangle(cornerRadius: Measure.round).stroke(
                    marked ? Palette.lead : Palette.line, style: StrokeStyle(lineWidth: marked ? 2 : 1))
            }
            .opacity(configuration.isPressed ? 0.7 : 1)
    }
}
