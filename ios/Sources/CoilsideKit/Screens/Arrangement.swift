import CoilsideCore

/// How blocks of a screen are set.
public enum Arrangement {
    /// A run of blocks of one kind that may stand side by side where there is room, or a single block.
    public struct Run: Sendable, Equatable, Identifiable {
        /// Its place in the list.
        public let id: Int
        /// Its blocks, in order.
        public let blocks: [Block]
    }

    /// Puts small blocks of one kind that follow each other together.
    public static func runs(_ blocks: [Block]) -> [Run] {
        var runs: [Run] = []
        for (at, block) in blocks.enumerated() {
            if let last = runs.last, let kind = block.sideBySide, last.blocks.first?.sideBySide == kind {
                runs[runs.count - 1] = Run(id: last.id, blocks: last.blocks + [block])
            } else {
                runs.append(Run(id: at, blocks: [block]))
            }
        }
        return runs
    }

    /// Names what is before the person's eyes. A waiting time that begins is a new screen, and so is the next step of the same place.
    public static func here(_ screen: Screen) -> String {
        let steps = screen.blocks.compactMap { block -> String? in
            if case .step(let id, _, _, _, _, _) = block { id } else { nil }
        }
        let waits = Waiting.alone(screen.blocks) == nil ? "" : "waits"
        return [screen.place, screen.unit ?? "", steps.count == 1 ? steps[0] : "", waits].joined(separator: " ")
    }

    /// The block of a photograph that is wanted, wherever it stands: its 'before' and what such a photograph shows.
    public static func shot(_ slot: String, in blocks: [Block]) -> (drawing: Drawing?, before: PhotoView?)? {
        for block in blocks {
            switch block {
            case .shot(slot, _, _, let drawing, _, let before, _, _): return (drawing, before)
            case .step(_, _, _, _, _, let inside): if let found = shot(slot, in: inside) { return found }
            default: continue
            }
        }
        return nil
    }

    /// What must be heard as well as seen: the notices, and whether they are urgent.
    public static func spoken(_ screen: Screen) -> (text: String, urgent: Bool)? {
        guard !screen.notices.isEmpty else { return nil }
        let text = screen.notices.map { ([$0.title] + $0.lines).joined(separator: ". ") }.joined(separator: " ")
        return (text, screen.notices.contains { $0.tone == .danger || $0.tone == .attention })
    }
}

extension Block {
    /// The kind, where blocks of it may stand side by side.
    var sideBySide: String? {
        switch self {
        case .check: "check"
        case .button: "button"
        case .link: "link"
        case .number: "number"
        case .shot: "shot"
        case .caution: "caution"
        case .text, .step, .choice, .textEntry, .ink, .dwell, .mix, .table, .chart, .plot: nil
        }
    }
}
