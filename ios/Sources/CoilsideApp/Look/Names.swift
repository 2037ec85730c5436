import CoilsideCore
import SwiftUI

// Both the core and SwiftUI have a button: here a `Button` is what is drawn, and a `Press` is what the core says of it.
typealias Button = SwiftUI.Button
typealias Press = CoilsideCore.Button
