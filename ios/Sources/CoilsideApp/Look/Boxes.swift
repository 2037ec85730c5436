import SwiftUI

/// Measures that are the same everywhere, points.
enum Measure {
    /// The least height of what is pressed: more than a glove needs.
    static let target: CGFloat = 56
    /// The main button's.
    static let targetMain: CGFloat = 72
    /// Between things.
    static let gap: CGFloat = 16
    /// Of corners.
    static let round: CGFloat = 14
    /// The widest that lines of words become.
    static let lineMost: CGFloat = 720
}

extension View {
    /// A sheet of paper on the ground.
    func paper(_ wash: Color = Palette.paper, edge: Color = Palette.line) -> some View {
        padding(Measure.gap)
            .frame(maxWidth: .infinity, alignment: .leading)
            .background(wash, in: RoundedRectangle(cornerRadius: Measure.round))
            .overlay { RoundedRectangle(cornerRadius: Measure.round).stroke(edge, style: StrokeStyle(lineWidth: 1)) }
    }
}

extension View {
    /// The surface of a field to type into: red where what was typed is wrong, strong while somebody types.
    func typed(wrong: Bool, typing: Bool) -> some View {
        frame(minHeight: Measure.target)
            .background(Palette.sunk, in: RoundedRectangle(cornerRadius: 10))
            .overlay {
                RoundedRectangle(cornerRadius: 10)
                    .stroke(wrong ? Palette.danger : typing ? Palette.lead : Palette.edge, style: StrokeStyle(lineWidth: typing ? 3 : 1.5))
            }
    }
}

/// Things beside each other where there is room, below each other where there is none: on a small screen, or with large letters.
struct Beside<Content: View>: View {
    @ViewBuilder let content: () -> Content

    var body: some View {
        ViewThatFits(in: .horizontal) {
            HStack(alignment: .top, spacing: 12, content: content)
            VStack(alignment: .leading, spacing: 12, content: content)
        }
    }
}

/// Words with their drawing in front.
struct Marked: View {
    let glyph: String
    let text: String
    let ink: Color

    var body: some View {
        HStack(alignment: .firstTextBaseline, spacing: 8) {
            Glyph(glyph, size: 18)
            Text(verbatim: text)
        }
        .foregroundStyle(ink)
    }
}
