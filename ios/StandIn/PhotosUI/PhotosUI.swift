// Stand-in for Apple's PhotosUI, for Linux only: see StandIn/UIKit.
import Foundation
import SwiftUI

public struct PHPickerFilter: Equatable, Hashable, Sendable { public static let images = PHPickerFilter() }
public struct PhotosPickerItem: Equatable, Hashable, Sendable {
    public struct EncodingDisambiguationPolicy: Equatable, Hashable, Sendable { public static let automatic = Self(), current = Self(), compatible = Self() }
    public func loadTransferable<T: Transferable>(type: T.Type) async throws -> T? { fatalError() }
}
public struct PhotosPicker<Label: View>: View {
    public var body: Never { fatalError() }
    nonisolated public init(
        selection: Binding<PhotosPickerItem?>, matching filter: PHPickerFilter? = nil,
        preferredItemEncoding: PhotosPickerItem.EncodingDisambiguationPolicy = .automatic, @ViewBuilder label: () -> Label
    ) {}
}
