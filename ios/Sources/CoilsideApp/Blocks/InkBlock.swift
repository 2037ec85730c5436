import CoilsideCore
import CoilsideKit
import SwiftUI

/// Something to draw by hand. What is drawn is half typed until it is taken, so that an app that is started again still has it.
struct InkBlock: View {
    let field: String
    let label: String
    let hint: String
    let width: UInt32
    let height: UInt32
    let text: String
    let taken: String?
    let problem: String?
    let press: Press
    let others: [Press]
    @Environment(Companion.self) private var companion
    @State private var drawing: Strokes?

    var body: some View {
        let words = companion.session.words
        let shown = drawing ?? Strokes(companion.fields.text(field, known: text), width: width, height: height)
        VStack(alignment: .leading, spacing: 10) {
            Text(verbatim: label).font(.headline).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
            Text(verbatim: hint).font(.subheadline).foregroundStyle(Palette.soft)
            GeometryReader { box in
                Pen(strokes: shown)
                    .stroke(Palette.ink, style: StrokeStyle(lineWidth: 2.6, lineCap: .round, lineJoin: .round))
                    .contentShape(Rectangle())
                    .gesture(pen(box.size, from: shown))
            }
            .aspectRatio(CGFloat(width) / CGFloat(max(height, 1)), contentMode: .fit)
            .background(Palette.sunk, in: RoundedRectangle(cornerRadius: 10))
            .overlay { RoundedRectangle(cornerRadius: 10).stroke(Palette.edge, style: StrokeStyle(lineWidth: 1.5)) }
            .accessibilityElement(children: .ignore)
            .accessibilityLabel("\(label): \(words(shown.isEmpty ? "shell-ink-empty" : "shell-ink-drawn"))")
            .accessibilityAddTraits(.allowsDirectInteraction)
            FieldNotes(problem: problem, question: nil, taken: taken)
            Beside {
                PressView(button: press)
                Button(words("shell-ink-clear")) { companion.fields.drawn(field, "") }
                    .buttonStyle(PlateStyle(tone: .plain, main: false))
                ForEach(Array(others.enumerated()), id: \.offset) { each in PressView(button: each.element) }
            }
        }
    }

    private func pen(_ size: CGSize, from shown: Strokes) -> some Gesture {
        DragGesture(minimumDistance: 0)
            .onChanged { drag in
                var strokes = drawing ?? shown
                if drawing == nil { strokes.begin() }
                strokes.go(x: drag.location.x, y: drag.location.y, wide: size.width, high: size.height)
                drawing = strokes
            }
            .onEnded { _ in
                if let drawing { companion.fields.drawn(field, drawing.text) }
                drawing = nil
            }
    }
}

/// The strokes, stretched into a rectangle. A point alone is drawn as one.
private struct Pen: Shape {
    let strokes: Strokes

    func path(in rect: CGRect) -> Path {
        var path = Path()
        for line in strokes.lines(wide: rect.width, high: rect.height) {
            guard let first = line.first else { continue }
            path.move(to: CGPoint(x: first.x, y: first.y))
            for point in line.count > 1 ? Array(line.dropFirst()) : line { path.addLine(to: CGPoint(x: point.x, y: point.y)) }
        }
        return path
    }
}
