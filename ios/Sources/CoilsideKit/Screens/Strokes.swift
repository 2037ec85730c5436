import CoilsideCore
import Foundation

/// What is drawn by hand, as the core keeps it: whole numbers from the upper left corner of a box.
public struct Strokes: Codable, Equatable, Sendable {
    /// The box.
    public let width: UInt32, height: UInt32
    /// Each from where the finger was set down to where it was lifted: `[x, y]` after `[x, y]`.
    public private(set) var strokes: [[[Int]]]

    /// A point that lies nearer to the one before is not kept, points of the screen.
    static let nearPt = 1.2
    /// More points than the core keeps, and fewer than it takes.
    static let pointsMost = 16_000

    /// What a text holds; a text that is none draws nothing.
    public init(_ text: String, width: UInt32, height: UInt32) {
        let read = try? JSONDecoder().decode(Strokes.self, from: Data(text.utf8))
        self.width = width
        self.height = height
        strokes = (read?.strokes ?? []).map { $0.filter { $0.count == 2 } }.filter { !$0.isEmpty }
    }

    /// The text that the core keeps; empty where nothing is drawn.
    public var text: String {
        guard !strokes.isEmpty else { return "" }
        let coder = JSONEncoder()
        coder.outputFormatting = .sortedKeys
        return (try? coder.encode(self)).map { String(decoding: $0, as: UTF8.self) } ?? ""
    }

    /// Nothing is drawn.
    public var isEmpty: Bool { strokes.isEmpty }

    /// The finger is set down.
    public mutating func begin() { strokes.append([]) }

    /// The finger is at a point of a box that is `wide` and `high` on the screen.
    public mutating func go(x: Double, y: Double, wide: Double, high: Double) {
        guard wide > 0, high > 0, !strokes.isEmpty, strokes.reduce(0, { $0 + $1.count }) < Self.pointsMost else { return }
        let within = { (share: Double, side: UInt32) in Int((min(1, max(0, share)) * Double(side)).rounded()) }
        let point = [within(x / wide, width), within(y / high, height)]
        if let last = strokes[strokes.count - 1].last {
            let near = Self.nearPt * Double(width) / wide
            let (dx, dy) = (Double(point[0] - last[0]), Double(point[1] - last[1]))
            if (dx * dx + dy * dy).squareRoot() < near { return }
        }
        strokes[strokes.count - 1].append(point)
    }

    /// Lines to draw in a box of that size on the screen: each from point to point.
    public func lines(wide: Double, high: Double) -> [[(x: Double, y: Double)]] {
        let (across, down) = (wide / Double(max(width, 1)), high / Double(max(height, 1)))
        return strokes.map { $0.map { (Double($0[0]) * across, Double($0[1]) * down) } }
    }
}
