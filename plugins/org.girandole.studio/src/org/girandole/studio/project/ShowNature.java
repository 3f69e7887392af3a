package org.girandole.studio.project;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.eclipse.core.resources.ICommand;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IProjectDescription;
import org.eclipse.core.resources.IProjectNature;
import org.eclipse.core.runtime.CoreException;

/** A project of shows: all its scripts are checked, open or not. */
public final class ShowNature implements IProjectNature {
    public static final String ID = "org.girandole.studio.nature";

    private IProject project;

    @Override
    public void configure() throws CoreException {
        IProjectDescription description = project.getDescription();
        List<ICommand> commands = new ArrayList<>(Arrays.asList(description.getBuildSpec()));
        if (commands.stream().noneMatch(command -> command.getBuilderName().equals(ShowBuilder.ID))) {
            ICommand command = description.newCommand();
            command.setBuilderName(ShowBuilder.ID);
            commands.add(command);
            description.setBuildSpec(commands.toArray(ICommand[]::new));
            project.setDescription(description, null);
        }
    }

    @Override
    public void deconfigure() throws CoreException {
        IProjectDescription description = project.getDescription();
        description.setBuildSpec(Arrays.stream(description.getBuildSpec())
                .filter(command -> !command.getBuilderName().equals(ShowBuilder.ID)).toArray(ICommand[]::new));
        project.setDescription(description, null);
    }

    @Override
    public IProject getProject() {
        return project;
    }

    @Override
    public void setProject(IProject of) {
        project = of;
    }
}
