import CoilsideCore
import CoilsideKit
import SwiftUI

/// A whole screen, as the core says it: head, live facts, notices, blocks, and the buttons in the lower part.
struct ScreenView: View {
    @Environment(Companion.self) private var companion
    @Environment(\.horizontalSizeClass) private var width
    @State private var here = ""
    /// The first block in sight, and the one where each place was left.
    @State private var position: Int?
    @State private var left: [String: Int] = [:]

    var body: some View {
        if let screen = companion.session.screen {
            HStack(spacing: 0) {
                // Where there is room the ways stand beside the screen: on an iPad, also in a split.
                if width == .regular, !screen.menu.isEmpty {
                    ScrollView { MenuList(screen: screen).padding(Measure.gap) }.frame(width: 280).background(Palette.sunk)
                    Divider()
                }
                page(screen)
            }
            .background(Palette.ground)
            .environment(\.locale, Locale(identifier: screen.language))
        } else {
            StateView(text: companion.session.trouble?.detail)
        }
    }

    private func page(_ screen: Screen) -> some View {
        VStack(spacing: 0) {
            HeadView(screen: screen)
            if !screen.strip.isEmpty { StripView(strip: screen.strip) }
            ScrollView {
                VStack(alignment: .leading, spacing: Measure.gap) {
                    if let trouble = companion.session.trouble { TroubleView(trouble: trouble) }
                    ForEach(Array(screen.notices.enumerated()), id: \.offset) { each in NoticeView(notice: each.element) }
                    if let lone { DwellBlock(dwell: lone, place: Waiting.onlyWaits(screen.blocks) ? .alone : .ahead) }
                    if screen.place == Companion.joinPlace { ScanButton() }
                    BlockList(blocks: screen.blocks, lone: lone).scrollTargetLayout()
                }
                .padding(Measure.gap)
                .frame(maxWidth: Measure.lineMost)
                .frame(maxWidth: .infinity)
            }
            // Another place begins at its top.
            .id(here)
            .scrollPosition(id: $position)
            .scrollDismissesKeyboard(.interactively)
            FootView(screen: screen, menu: width != .regular)
        }
        .onChange(of: Arrangement.here(screen), initial: true) { before, now in turn(from: before, to: now) }
        .onChange(of: Arrangement.spoken(screen)?.text) { _, text in
            if let text { AccessibilityNotification.Announcement(text).post() }
        }
    }

    private var lone: Dwell? { companion.session.screen.flatMap { Waiting.alone($0.blocks) } }

    /// Another screen is shown: it stands where it was left, and what is typed elsewhere is the core's to show again.
    private func turn(from before: String, to now: String) {
        guard now != here else { return }
        if !before.isEmpty { left[before] = position }
        here = now
        position = left[now]
        companion.fields.turned()
    }
}
