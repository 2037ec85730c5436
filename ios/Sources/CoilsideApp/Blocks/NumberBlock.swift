import CoilsideCore
import CoilsideKit
import SwiftUI

/// A number with its unit.
struct NumberBlock: View {
    let field: String
    let label: String
    let unit: String
    let text: String
    let hint: String
    let before: String?
    let problem: String?
    let question: Question?
    let taken: String?
    let couldNot: Press?
    @Environment(Companion.self) private var companion
    @FocusState private var typing: Bool

    var body: some View {
        VStack(alignment: .leading, spacing: 10) {
            Text(verbatim: label).font(.headline).foregroundStyle(Palette.ink).accessibilityHidden(true)
            HStack(spacing: 10) {
                HStack(spacing: 8) {
                    TextField("", text: shown)
                        .font(.title2.monospacedDigit().weight(.semibold))
                        .keyboardType(.decimalPad)
                        .focused($typing)
                        .autocorrectionDisabled()
                        .accessibilityLabel(label)
                        .accessibilityHint([unit, problem ?? "", before ?? "", hint].filter { !$0.isEmpty }.joined(separator: ". "))
                    if !unit.isEmpty { Text(verbatim: unit).font(.title3).foregroundStyle(Palette.soft).accessibilityHidden(true) }
                }
                .padding(.horizontal, 14)
                .typed(wrong: problem != nil, typing: typing)
                // The keypad for numbers has no minus.
                Button {
                    turnSign()
                } label: {
                    Text(verbatim: "±").font(.title2)
                }
                .buttonStyle(PlateStyle(tone: .quiet, main: false))
                .frame(width: 64)
                .accessibilityLabel(companion.session.words("shell-sign"))
            }
            FieldNotes(problem: problem, question: question, taken: taken)
            if let before { Text(verbatim: before).font(.subheadline).foregroundStyle(Palette.soft) }
            if !hint.isEmpty { Text(verbatim: hint).font(.subheadline).foregroundStyle(Palette.soft) }
            if let couldNot { PressView(button: couldNot) }
        }
        .onChange(of: typing) { _, now in if !now { left() } }
        .toolbar {
            ToolbarItemGroup(placement: .keyboard) {
                if typing {
                    Spacer()
                    Button(companion.session.words("shell-key-done")) { typing = false }
                }
            }
        }
    }

    private var shown: Binding<String> {
        Binding(now: { companion.fields.text(field, known: text) }, typed: { companion.fields.typed(field, $0) })
    }

    private func left() {
        let halfTyped = taken == nil && problem == nil && question == nil
        companion.fields.left(field, companion.fields.text(field, known: text), halfTyped: halfTyped)
    }

    private func turnSign() {
        let now = companion.fields.text(field, known: text)
        let bare = now.trimmingPrefix { $0 == "-" || $0 == "−" || $0 == " " }
        companion.fields.typed(field, bare.count == now.count ? "-" + now : String(bare))
    }
}
