import CoilsideKit
import SwiftUI

/// A line drawing, as large as the words beside it. It is never the only sign, so a screen reader passes over it.
struct Glyph: View {
    private let drawing: LineDrawing
    @ScaledMetric private var side: CGFloat

    init(_ name: String, size: CGFloat = 22) { self.init(.glyph(name), size: size) }

    init(_ drawing: LineDrawing, size: CGFloat = 22) {
        self.drawing = drawing
        _side = ScaledMetric(wrappedValue: size, relativeTo: .body)
    }

    var body: some View {
        Drawn(drawing: drawing)
            .stroke(style: StrokeStyle(lineWidth: max(2, side / 11), lineCap: .round, lineJoin: .round))
            .frame(width: side, height: side)
            .accessibilityHidden(true)
    }
}

/// The strokes of a drawing, stretched into a rectangle.
private struct Drawn: Shape {
    let drawing: LineDrawing

    func path(in rect: CGRect) -> Path {
        let scale = min(rect.width, rect.height) / LineDrawing.box
        let at = { (point: LineDrawing.Point) in CGPoint(x: rect.minX + point.x * scale, y: rect.minY + point.y * scale) }
        var path = Path()
        for stroke in drawing.strokes {
            switch stroke {
            case .move(let to): path.move(to: at(to))
            case .line(let to): path.addLine(to: at(to))
            case .curve(let first, let second, let to): path.addCurve(to: at(to), control1: at(first), control2: at(second))
            case .close: path.closeSubpath()
            }
        }
        return path
    }
}
