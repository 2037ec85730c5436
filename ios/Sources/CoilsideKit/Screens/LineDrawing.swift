import Foundation

/// A simple line drawing in a box of 24 by 24: a sign of the shell, or of a kind of hazard. Never the only sign: words stand beside each.
public struct LineDrawing: Sendable, Equatable {
    /// A point of the box, from its upper left corner.
    public struct Point: Sendable, Equatable {
        /// To the right.
        public let x: Double
        /// Downwards.
        public let y: Double
    }

    /// One stroke of the pen.
    public enum Stroke: Sendable, Equatable {
        /// Set down elsewhere.
        case move(Point)
        /// A straight line.
        case line(Point)
        /// A cubic curve with its two handles.
        case curve(Point, Point, Point)
        /// Back to where the line began.
        case close
    }

    /// In the order in which they are drawn.
    public let strokes: [Stroke]

    /// How wide and high the box is.
    public static let box = 24.0

    /// The drawings of the shells; all shells draw the same.
    private static let all: [String: [String: String]] = {
        guard let file = Bundle.module.url(forResource: "drawings", withExtension: "json"), let bytes = try? Data(contentsOf: file)
        else { return [:] }
        return (try? JSONDecoder().decode([String: [String: String]].self, from: bytes)) ?? [:]
    }()

    /// A sign of the shell by its name; a dot where there is none of that name.
    public static func glyph(_ name: String) -> LineDrawing { LineDrawing(all["glyphs"]?[name] ?? all["glyphs"]?["plain"] ?? "") }

    /// The sign of a kind of hazard, or the general one.
    public static func sign(_ name: String) -> LineDrawing {
        let plain = name.hasPrefix("emergency-") ? String(name.dropFirst("emergency-".count)) : name
        return all["signs"]?[plain].map(LineDrawing.init) ?? glyph("danger")
    }

    /// Reads path data as SVG has it (W3C SVG 1.1, 8.3): of its commands those that our drawings use.
    public init(_ path: String) {
        var reader = PathReader(path)
        strokes = reader.strokes()
    }
}

/// Reads path data from its first letter to its last. What it cannot read ends the drawing there.
private struct PathReader {
    private let letters: [Character]
    private var at = 0
    private var pen = LineDrawing.Point(x: 0, y: 0)
    private var start = LineDrawing.Point(x: 0, y: 0)
    /// The second handle of the curve before, as long as curves follow each other.
    private var handle: LineDrawing.Point?

    init(_ path: String) { letters = Array(path) }

    mutating func strokes() -> [LineDrawing.Stroke] {
        var strokes: [LineDrawing.Stroke] = []
        var command: Character = "M"
        while let next = peek() {
            if next.isLetter {
                command = next
                at += 1
            }
            guard let stroke = one(command) else { break }
            strokes += stroke
            // Further pairs behind a move are lines.
            if command == "M" { command = "L" } else if command == "m" { command = "l" }
        }
        return strokes
    }

    private mutating func one(_ command: Character) -> [LineDrawing.Stroke]? {
        if !"cCsS".contains(command) { handle = nil }
        let from = command.isLowercase ? pen : LineDrawing.Point(x: 0, y: 0)
        switch command.lowercased() {
        case "m":
            guard let to = point(from) else { return nil }
            (pen, start) = (to, to)
            return [.move(to)]
        case "l":
            return point(from).map { line($0) }
        case "h":
            return number().map { line(LineDrawing.Point(x: from.x + $0, y: pen.y)) }
        case "v":
            return number().map { line(LineDrawing.Point(x: pen.x, y: from.y + $0)) }
        case "c":
            guard let first = point(from), let second = point(from), let to = point(from) else { return nil }
            (pen, handle) = (to, second)
            return [.curve(first, second, to)]
        case "s":
            // The first handle is the last one's mirror image.
            let first = handle.map { LineDrawing.Point(x: 2 * pen.x - $0.x, y: 2 * pen.y - $0.y) } ?? pen
            guard let second = point(from), let to = point(from) else { return nil }
            (pen, handle) = (to, second)
            return [.curve(first, second, to)]
        case "a":
            return arc(from)
        case "z":
            pen = start
            return [.close]
        default:
            return nil
        }
    }

    private mutating func line(_ to: LineDrawing.Point) -> [LineDrawing.Stroke] {
        pen = to
        return [.line(to)]
    }

    /// An arc of a circle as curves of a quarter at most (SVG 1.1, F.6.5, with both radii alike and no turn: our drawings have no other).
    private mutating func arc(_ from: LineDrawing.Point) -> [LineDrawing.Stroke]? {
        guard var r = number(), number() != nil, number() != nil, let large = flag(), let sweep = flag(), let to = point(from) else { return nil }
        let (hx, hy) = ((pen.x - to.x) / 2, (pen.y - to.y) / 2)
        let half = hx * hx + hy * hy
        r = max(r, half.squareRoot())
        guard half > 0, r > 0 else { return line(to) }
        let off = (large == sweep ? -1.0 : 1.0) * max(0, (r * r - half) / half).squareRoot()
        let (cx, cy) = ((pen.x + to.x) / 2 + off * hy, (pen.y + to.y) / 2 - off * hx)
        let begin = atan2(pen.y - cy, pen.x - cx)
        var turn = atan2(to.y - cy, to.x - cx) - begin
        if sweep, turn < 0 { turn += 2 * .pi } else if !sweep, turn > 0 { turn -= 2 * .pi }
        let parts = max(1, Int((abs(turn) / (.pi / 2)).rounded(.up)))
        let step = turn / Double(parts)
        let handle = 4.0 / 3.0 * tan(step / 4) * r
        pen = to
        return (0..<parts).map { part in
            let (a, b) = (begin + Double(part) * step, begin + Double(part + 1) * step)
            let end = part == parts - 1 ? to : LineDrawing.Point(x: cx + r * cos(b), y: cy + r * sin(b))
            return .curve(
                LineDrawing.Point(x: cx + r * cos(a) - handle * sin(a), y: cy + r * sin(a) + handle * cos(a)),
                LineDrawing.Point(x: end.x + handle * sin(b), y: end.y - handle * cos(b)), end)
        }
    }

    private mutating func point(_ from: LineDrawing.Point) -> LineDrawing.Point? {
        guard let x = number(), let y = number() else { return nil }
        return LineDrawing.Point(x: from.x + x, y: from.y + y)
    }

    private mutating func peek() -> Character? {
        while at < letters.count, letters[at] == " " || letters[at] == "," { at += 1 }
        return at < letters.count ? letters[at] : nil
    }

    /// A flag is one digit, also where the next number follows without a gap.
    private mutating func flag() -> Bool? {
        guard let digit = peek(), digit == "0" || digit == "1" else { return nil }
        at += 1
        return digit == "1"
    }

    private mutating func number() -> Double? {
        guard peek() != nil else { return nil }
        var text = ""
        var dotted = false
        while at < letters.count {
            let letter = letters[at]
            if letter == "-", !text.isEmpty { break }
            if letter == "." {
                if dotted { break }
                dotted = true
            }
            guard letter.isNumber || letter == "-" || letter == "." else { break }
            text.append(letter)
            at += 1
        }
        return Double(text)
    }
}
