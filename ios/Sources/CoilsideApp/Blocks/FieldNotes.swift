import CoilsideCore
import SwiftUI

/// What is wrong with a field, what is asked back, and what stands in the record.
struct FieldNotes: View {
    let problem: String?
    let question: Question?
    let taken: String?

    var body: some View {
        if let problem { Marked(glyph: "danger", text: problem, ink: Palette.danger) }
        if let question {
            VStack(alignment: .leading, spacing: 10) {
                Marked(glyph: "attention", text: question.text, ink: Palette.attention)
                PressView(button: question.confirm)
            }
            .paper(Palette.attentionWash, edge: Palette.attention)
        }
        if let taken { Marked(glyph: "kept", text: taken, ink: Palette.good) }
    }
}
