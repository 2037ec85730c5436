import CoilsideCore
import SwiftUI
import UIKit

/// Our colours, the same as the browser shell's: light, dark, and each with more contrast. Colour is never the only sign.
enum Palette {
    static let ground = shade(0xedf2f1, 0x060d0f, 0xffffff, 0x000000)
    static let paper = shade(0xffffff, 0x101b1e, 0xffffff, 0x000000)
    static let sunk = shade(0xf4f7f6, 0x0b1518, 0xffffff, 0x000000)
    static let ink = shade(0x08171a, 0xeef5f4, 0x000000, 0xffffff)
    static let soft = shade(0x34464a, 0xb9c9ca, 0x000000, 0xffffff)
    static let line = shade(0xc6d1d1, 0x2b3c40, 0x000000, 0xffffff)
    static let edge = shade(0x5a6d71, 0x8ba0a4, 0x000000, 0xffffff)
    static let lead = shade(0x0a4753, 0x78d5e0, 0x002a33, 0xa8f1fa)
    static let onLead = shade(0xffffff, 0x022127, 0xffffff, 0x000000)
    static let leadWash = shade(0xe0eef0, 0x12323a, 0xffffff, 0x000000)
    static let top = shade(0x08343e, 0x0a2128, 0x000000, 0x000000)
    static let onTop = shade(0xffffff, 0xffffff, 0xffffff, 0xffffff)
    static let softOnTop = shade(0xc8dfe2, 0xb4cdd1, 0xffffff, 0xffffff)
    static let comb = shade(0xf3ae6e, 0xf3ae6e, 0xffffff, 0xffffff)
    static let combRest = shade(0x47707a, 0x3b5a62, 0x5a6d71, 0x5a6d71)
    static let good = shade(0x0d5730, 0x84dfa8, 0x00391b, 0xa6f5c3)
    static let goodWash = shade(0xe2f2e7, 0x0d2819, 0xffffff, 0x000000)
    static let attention = shade(0x693900, 0xffcf75, 0x452500, 0xffdf9e)
    static let attentionWash = shade(0xfff0cd, 0x2d2107, 0xffffff, 0x000000)
    static let danger = shade(0x8a120e, 0xffaaa0, 0x6e0000, 0xffcdc7)
    static let dangerWash = shade(0xfdebe8, 0x361311, 0xffffff, 0x000000)
    static let onDanger = shade(0xffffff, 0x2b0503, 0xffffff, 0x000000)
    static let wait = shade(0x06303a, 0x06323c, 0x000000, 0x000000)
    static let waitReady = shade(0x0b4a2a, 0x0b4a2a, 0x00391b, 0x00391b)
    static let waitOver = shade(0x7c100c, 0x7c100c, 0x6e0000, 0x6e0000)
    static let bars = [lead, shade(0xa5591b, 0xf3ae6e, 0x6b3300, 0xffd3a8), edge, good]

    private static func shade(_ light: UInt32, _ dark: UInt32, _ plainLight: UInt32, _ plainDark: UInt32) -> Color {
        Color(
            uiColor: UIColor { traits in
                let more = traits.accessibilityContrast == .high
                let code = traits.userInterfaceStyle == .dark ? (more ? plainDark : dark) : (more ? plainLight : light)
                let part = { (shift: UInt32) in CGFloat((code >> shift) & 0xff) / 255 }
                return UIColor(red: part(16), green: part(8), blue: part(0), alpha: 1)
            })
    }
}

extension Tone {
    /// How words of this tone are coloured.
    var ink: Color {
        switch self {
        case .plain: Palette.ink
        case .quiet: Palette.soft
        case .good: Palette.good
        case .attention: Palette.attention
        case .danger: Palette.danger
        case .primary: Palette.lead
        }
    }

    /// What lies behind a box of this tone.
    var wash: Color {
        switch self {
        case .plain, .quiet: Palette.paper
        case .good: Palette.goodWash
        case .attention: Palette.attentionWash
        case .danger: Palette.dangerWash
        case .primary: Palette.leadWash
        }
    }

    /// The drawing that says the same.
    var glyph: String {
        switch self {
        case .plain: "plain"
        case .quiet: "quiet"
        case .good: "done"
        case .attention: "attention"
        case .danger: "danger"
        case .primary: "primary"
        }
    }
}
