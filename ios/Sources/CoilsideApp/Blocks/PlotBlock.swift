import CoilsideCore
import SwiftUI

/// Lines over two axes. The words say the same to whoever does not see them.
struct PlotBlock: View {
    let plot: Plot

    var body: some View {
        VStack(alignment: .leading, spacing: 10) {
            Text(verbatim: plot.caption).font(.headline).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
            Text(verbatim: plot.yTitle).font(.caption).foregroundStyle(Palette.soft).accessibilityHidden(true)
            HStack(alignment: .top, spacing: 6) {
                ticks(plot.yTicks, upwards: true).frame(width: 52)
                lines
            }
            .frame(height: 260)
            .accessibilityElement(children: .ignore)
            .accessibilityLabel(plot.text)
            .accessibilityAddTraits(.isImage)
            ticks(plot.xTicks, upwards: false).frame(height: 22).padding(.leading, 58).accessibilityHidden(true)
            Text(verbatim: plot.xTitle).font(.caption).foregroundStyle(Palette.soft).frame(maxWidth: .infinity, alignment: .trailing)
                .accessibilityHidden(true)
            ForEach(Array(named.enumerated()), id: \.offset) { each in
                HStack(spacing: 10) {
                    Trace(points: [PlotPoint(x: 0, y: 0.5), PlotPoint(x: 1, y: 0.5)])
                        .stroke(ink(each.element.style), style: stroke(each.element.style))
                        .frame(width: 44, height: 12)
                    Text(verbatim: each.element.label).font(.subheadline).foregroundStyle(Palette.ink)
                }
                .accessibilityHidden(true)
            }
        }
        .paper()
    }

    private var lines: some View {
        ZStack {
            ForEach(Array(plot.yTicks.enumerated()), id: \.offset) { each in
                Trace(points: [PlotPoint(x: 0, y: each.element.at), PlotPoint(x: 1, y: each.element.at)]).stroke(
                    Palette.line, style: StrokeStyle(lineWidth: 1))
            }
            ForEach(Array(plot.xTicks.enumerated()), id: \.offset) { each in
                Trace(points: [PlotPoint(x: each.element.at, y: 0), PlotPoint(x: each.element.at, y: 1)]).stroke(
                    Palette.line, style: StrokeStyle(lineWidth: 1))
            }
            Trace(points: [PlotPoint(x: 0, y: 1), PlotPoint(x: 0, y: 0), PlotPoint(x: 1, y: 0)]).stroke(
                Palette.edge, style: StrokeStyle(lineWidth: 1.5))
            ForEach(Array(plot.lines.enumerated()), id: \.offset) { each in
                Trace(points: each.element.points).stroke(ink(each.element.style), style: stroke(each.element.style))
            }
        }
    }

    private func ticks(_ ticks: [Tick], upwards: Bool) -> some View {
        GeometryReader { box in
            ForEach(Array(ticks.enumerated()), id: \.offset) { each in
                Text(verbatim: each.element.text).font(.caption2.monospacedDigit()).foregroundStyle(Palette.soft)
                    .position(
                        x: upwards ? box.size.width / 2 : each.element.at * box.size.width,
                        y: upwards ? (1 - each.element.at) * box.size.height : box.size.height / 2)
            }
        }
    }

    /// Each label once: a thing may be drawn in parts.
    private var named: [PlotLine] {
        plot.lines.enumerated().filter { at, line in
            plot.lines.firstIndex { $0.label == line.label && $0.style == line.style } == at
        }.map(\.element)
    }

    private func ink(_ style: LineStyle) -> Color { style == .plain ? Palette.edge : style == .strong ? Palette.lead : Palette.bars[1] }

    private func stroke(_ style: LineStyle) -> StrokeStyle {
        switch style {
        case .plain: StrokeStyle(lineWidth: 1.5)
        case .strong: StrokeStyle(lineWidth: 3.5, lineCap: .round, lineJoin: .round)
        case .dashed: StrokeStyle(lineWidth: 3.5, lineCap: .butt, lineJoin: .round, dash: [9, 6])
        }
    }
}

/// A line from point to point; every coordinate lies in 0…1, upwards.
private struct Trace: Shape {
    let points: [PlotPoint]

    func path(in rect: CGRect) -> Path {
        var path = Path()
        for (at, point) in points.enumerated() {
            let here = CGPoint(x: rect.minX + point.x * rect.width, y: rect.maxY - point.y * rect.height)
            if at == 0 { path.move(to: here) } else { path.addLine(to: here) }
        }
        return path
    }
}
