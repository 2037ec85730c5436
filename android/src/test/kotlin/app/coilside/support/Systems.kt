package app.coilside.support

import java.util.TreeMap
import javax.annotation.Priority
import javax.inject.Inject
import org.robolectric.internal.dependency.DependencyResolver
import org.robolectric.pluginapi.Sdk
import org.robolectric.plugins.DefaultSdkProvider

/** The two systems that the tests run on, the oldest and the newest: Robolectric would fetch its very newest one beside them. */
@Priority(1)
class Systems @Inject constructor(resolver: DependencyResolver) : DefaultSdkProvider(resolver) {
    override fun populateSdks(knownSdks: TreeMap<Int, Sdk>) {
        super.populateSdks(knownSdks)
        knownSdks.keys.retainAll(setOf(OLDEST, NEWEST))
    }

    companion object {
        const val OLDEST = 26
        const val NEWEST = 34
    }
}
