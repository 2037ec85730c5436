import CoilsideCore
import CoilsideKit
import SwiftUI
import UIKit

/// A photograph that is wanted, with those that were taken.
struct ShotBlock: View {
    let title: String
    let show: String
    let drawing: Drawing?
    let photos: [PhotoView]
    let before: PhotoView?
    let press: Press
    let skip: Press?
    @Environment(Companion.self) private var companion

    var body: some View {
        VStack(alignment: .leading, spacing: 12) {
            Text(verbatim: title).font(.headline).foregroundStyle(Palette.ink).accessibilityAddTraits(.isHeader)
            if !show.isEmpty { Text(verbatim: show).foregroundStyle(Palette.soft) }
            Beside {
                if let drawing, photos.isEmpty { SketchView(drawing: drawing) }
                if let before { PictureView(photo: before, badge: companion.session.words("shell-before-picture")) }
                ForEach(photos, id: \.digest) { photo in PictureView(photo: photo, badge: nil) }
            }
            Beside {
                PressView(button: press, icon: "camera")
                if let skip { PressView(button: skip) }
            }
        }
    }
}

/// A photograph small, with its words below. The words stand there also where the picture is not there yet.
struct PictureView: View {
    let photo: PhotoView
    let badge: String?
    @Environment(Companion.self) private var companion

    var body: some View {
        VStack(alignment: .leading, spacing: 6) {
            picture
                .frame(maxWidth: 260, maxHeight: 195)
                .background(Palette.sunk, in: RoundedRectangle(cornerRadius: 10))
            if let badge { Text(verbatim: badge).font(.caption.weight(.bold)).foregroundStyle(Palette.lead) }
            Text(verbatim: photo.caption).font(.subheadline).foregroundStyle(Palette.ink)
            ForEach(photo.read, id: \.self) { line in Text(verbatim: line).font(.subheadline).foregroundStyle(Palette.soft) }
            ForEach(photo.flags, id: \.self) { flag in Marked(glyph: "attention", text: flag, ink: Palette.attention) }
        }
        .accessibilityElement(children: .combine)
        .accessibilityAddTraits(.isImage)
    }

    @ViewBuilder private var picture: some View {
        if let file = companion.preview(photo.digest), let image = UIImage(contentsOfFile: file.path) {
            Image(uiImage: image).resizable().scaledToFit()
        } else {
            Glyph("picture", size: 56).foregroundStyle(Palette.edge).frame(minWidth: 120, minHeight: 90)
        }
    }
}

/// What such a photograph shows, as plain lines.
struct SketchView: View {
    let drawing: Drawing

    var body: some View {
        ZStack {
            Sketch(lines: drawing.lines.filter { !$0.wanted }).stroke(
                Palette.edge, style: StrokeStyle(lineWidth: 1.5, lineCap: .round, lineJoin: .round))
            Sketch(lines: drawing.lines.filter(\.wanted)).stroke(Palette.lead, style: StrokeStyle(lineWidth: 3, lineCap: .round, lineJoin: .round))
        }
        .aspectRatio(4.0 / 3.0, contentMode: .fit)
        .frame(maxWidth: 260)
        .background(Palette.sunk, in: RoundedRectangle(cornerRadius: 10))
        .accessibilityElement(children: .ignore)
        .accessibilityLabel(drawing.text)
        .accessibilityAddTraits(.isImage)
    }
}

/// Lines whose corners lie in 0…1, upwards.
private struct Sketch: Shape {
    let lines: [DrawingLine]

    func path(in rect: CGRect) -> Path {
        var path = Path()
        for line in lines {
            for (at, point) in line.points.enumerated() {
                let here = CGPoint(x: rect.minX + point.x * rect.width, y: rect.maxY - point.y * rect.height)
                if at == 0 { path.move(to: here) } else { path.addLine(to: here) }
            }
        }
        return path
    }
}
